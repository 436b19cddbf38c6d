# Ob ein Plan mit Handwerkzeug zu sägen ist und was dem im Weg steht.
byhand-verdict-yes = Von Hand zu machen: Bohrmaschine, Stichsäge und Feile genügen.
byhand-verdict-care = Von Hand zu machen, mit Sorgfalt.
byhand-verdict-no = So, wie es ist, nicht von Hand zu machen.
byhand-effort = Etwa { $way } zu sägen.
byhand-effort-drilling = Etwa { $way } zu sägen, { $drilled } zu bohren.
byhand-holes = { $count ->
    [one] { $count } Loch
   *[other] { $count } Löcher
 }
byhand-corners = { $count ->
    [one] { $count } Innenecke
   *[other] { $count } Innenecken
 }
byhand-much = Viel zu sägen
byhand-much-text = { $way } zu sägen dauert Tage.
byhand-corner = Ecken
byhand-corner-text = Eine Säge macht keine rechtwinklige Ecke: Bohre zuerst die kleinen Kreise der
    Schablonen. Sie öffnen die Ecken von Zapfen und Schlitzen, damit Rechtwinkliges ganz hineingeht.
    Wo man die Bohrung sähe, mach die Ecke stattdessen mit Feile oder Stechbeitel rechtwinklig.
byhand-driven = Verbindungen, die eingetrieben werden
byhand-driven-text = Die engsten haben { $play } Spiel auf jeder Seite, weniger, als man von Hand
    sägen und feilen kann.
byhand-close = Enge Verbindungen
byhand-close-text = Die engsten haben { $play } Spiel auf jeder Seite. Säge neben der Linie, im
    Abfall, und feile bis zu ihr; probiere mit einem Reststück der Platte, bis es mit dem Druck der
    Hand hineingeht.
byhand-narrow = Schmale Öffnungen
byhand-narrow-text = Öffnungen ({ $parts }) sind weniger als { $unit ->
    [in] 1/8 in
   *[mm] 3 mm
 } breit: Dort lässt sich kein Sägeblatt führen.
byhand-recess = Vertiefungen
byhand-recess-text = Vertiefungen ({ $parts }) gehen nicht ganz durch: Räume sie mit der Oberfräse
    an einer Leiste aus, oder säge und stich ihre Wände und stich den Grund ab; miss dabei oft die
    Tiefe.
byhand-bores = Bohrungen bis zu einer Tiefe
byhand-bores-text = Manche Löcher enden im Holz oder sind an der Fläche weiter ({ $parts }): Bohre
    zuerst den weiten Teil, mit einem Bohrer, der einen ebenen Grund lässt, und mit einem Anschlag
    für die Tiefe.
byhand-tilted = Schräge Verbindungen
byhand-tilted-text = Manche Stücke stehen schräg. Ihre Verbindungen halten das nur, wenn jede Wand
    rechtwinklig zur Fläche ist: Führe das Sägeblatt und stelle den Winkel beim Zusammenbauen mit
    einer Schmiege ein.
byhand-small = Kleine Stücke
byhand-small-text = { $parts }: weniger als { $unit ->
    [in] 2 in
   *[mm] 50 mm
 } breit, zu klein, um sie unter einer Stichsäge zu halten. Spann die Platte fest und säge sie
    zuletzt frei, oder nimm eine Laubsäge.
byhand-art = Gravur
byhand-art-text = Eine Gravur ({ $parts }) lässt sich nicht von Hand fräsen. Zeichne sie mit
    Bleistift nach, damit Schritte, die sich danach richten, noch stimmen, oder lass sie weg.
