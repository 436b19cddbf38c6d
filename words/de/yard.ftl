# Der Zuschnittzettel: was du verlangst und wo die Säge des Händlers es klein genug macht.
yard-sawn = Lass die Schnittfuge zu gleichen Teilen auf beiden Seiten der genannten Stelle liegen;
    zwischen ihr und jedem Stück ist Platz für eine Säge von { $saw }. Schreib auf jeden Zuschnitt
    seine Nummer und zeichne seine linke untere Ecke an: Auf der Maschine liegt 0,0 der Datei der
    Platte so weit links von dieser Ecke und darunter, wie angegeben.
yard-grade = Güte { $grade }
yard-plies = { $count } Lagen
yard-thick = von { $range } Dicke
yard-each = je { $weight }
yard-long = { $length } lang
yard-limits = Zuschnitte dürfen nicht größer als { $size } und nicht schwerer als { $mass } sein,
    für ein Auto und eine Person.
yard-limits-bed = Zuschnitte dürfen nicht größer als { $size } und nicht schwerer als { $mass }
    sein, für ein Auto und eine Person; wo das zu haben ist, nicht größer als der Tisch von
    { $bed }.
yard-sheet = Platte { $number }: { $sheet }, { $size }
yard-no-cut = Sie braucht keinen Schnitt: Sie kann so mitgenommen werden, wie sie ist.
yard-straight-cuts = { $count ->
    [one] { $count } gerader Schnitt
   *[other] { $count } gerade Schnitte
 }
yard-cuts = { $blanks ->
    [one] { $cuts }, durch kein Stück: { $blanks } Zuschnitt.
   *[other] { $cuts }, durch kein Stück: { $blanks } Zuschnitte.
 }
yard-left = Was übrig bleibt: { $blanks }.
yard-off-bed = { $count ->
    [1] Zuschnitt { $blanks } ist immer noch größer als der Tisch: Kein gerader Schnitt geht
    zwischen den Stücken hindurch.
   *[other] Die Zuschnitte { $blanks } sind immer noch größer als der Tisch: Kein gerader Schnitt
    geht zwischen den Stücken hindurch.
 }
yard-whole-large = { $count ->
    [1] Sie muss ganz bleiben: { $pieces } wäre schon für sich zu groß.
   *[other] Sie muss ganz bleiben: { $pieces } wären schon für sich zu groß.
 }
yard-whole-crossed = Sie muss ganz bleiben: { $cuts } gerade Schnitte von Kante zu Kante machen sie
    nicht klein genug, ohne ein Stück zu kreuzen.
yard-left-of = links von Schnitt { $number }
yard-right-of = rechts von Schnitt { $number }
yard-below-of = unter Schnitt { $number }
yard-above-of = über Schnitt { $number }
yard-cut-within = Was { $where } liegt: { $cut }
yard-cut-across = { $at } von der linken Kante, gerade quer
yard-cut-along = { $at } von der unteren Kante, gerade längs
yard-corner-right = { $far } nach rechts
yard-corner-up = { $far } nach oben
yard-corner-own = die der Platte selbst
