# Wie eine Platte gemessen wird und ihre Dateien gewählt werden.
measuring-measure = Eine Platte ist selten so dick, wie sie heißt. Miss deine mit einem
    Messschieber, der { $unit ->
    [in] 0,001 in zeigt, an acht Stellen, 2 in (50 mm)
   *[mm] 0,05 mm zeigt, an acht Stellen, 50 mm (2 in)
 } vom Rand: nahe den vier Ecken und in der Mitte jeder Seite, wie EN 324-1 es tut. Ein Grat oder
    eine hochstehende Ecke misst als Platte mit: Bürste die Kante zuerst sauber.
measuring-points = Acht Stellen, { $unit ->
    [in] 2 in
   *[mm] 50 mm
 } vom Rand.
measuring-yard = Nimm einen Messschieber mit: Frag, was eine Platte misst, nicht, wie sie heißt. Der
    dickste Messwert zählt.
measuring-counts = Der dickste Messwert zählt, denn auch diese Stelle muss hineingehen; wo die
    Platte dünner ist, haben ihre Verbindungen um so viel mehr Spiel.
measuring-type = Ein Messwert genügt, acht sind besser. Tippe sie, wie der Messschieber sie zeigt,
    { $unit ->
    [in] in Zoll oder in Millimetern
   *[mm] mit Punkt oder Komma, in mm oder in Zoll
 }:
measuring-sets-made = Jeder Schlitz folgt der Dicke deiner Platte. Fertig liegt für jede Dicke in
    der Tabelle ein ganzer Satz Schnittdateien; der Name eines Ordners und jeder Datei darin ist die
    Dicke, für die sie sind. Auf { $unit ->
    [in] 0,005 in
   *[mm] 0,1 mm
 } gerundet nennt der dickste Messwert den Satz, den du nimmst; wo es für genau diese Dicke keinen
    gibt, werden Dateien für das gemacht, was du gemessen hast.
measuring-sets-next = Jeder Schlitz folgt der Dicke deiner Platte. Fertig liegt für jede Dicke in
    der Tabelle ein ganzer Satz Schnittdateien; der Name eines Ordners und jeder Datei darin ist die
    Dicke, für die sie sind. Auf { $unit ->
    [in] 0,005 in
   *[mm] 0,1 mm
 } gerundet nennt der dickste Messwert den Satz, den du nimmst; wo es für genau diese Dicke keinen
    gibt, nimm den nächstdickeren.
measuring-each = Schlag jede der Platten für sich nach.
measuring-ready = Jeder Schlitz folgt der Dicke deiner Platte. Fertig liegt ein Satz Schnittdateien,
    für { $thickness }: In einer dickeren Platte gehen die Verbindungen nicht hinein, in einer
    dünneren sind sie locker.
measuring-one = Jeder Schlitz dieses Plans ist für eine Dicke gezeichnet: { $thickness }. In einer
    dickeren Platte gehen die Verbindungen nicht hinein, in einer dünneren sind sie locker.
measuring-coupon = Der Messschieber sagt, wie dick die Platte ist, und damit, welche Dateien du
    nimmst. Die Passprobe sagt, was der Fräser wirklich schneidet: Einer von { $cutter }
    schneidet vielleicht { $cut }, und dann ist jeder Schlitz breiter und jeder Zapfen schmaler als seine Linie. Schneide sie aus
    einer Ecke eben dieser Platte, mit dem Fräser und den Einstellungen, mit denen du den Plan
    schneiden wirst, und ohne etwas zu korrigieren.
measuring-read = Jeder Schlitz wächst in Stufen, ebenso jeder Arm des Zapfens von seiner Spitze an.
    Zähle die Stufen der Schlitze an den Kerben in der Kante daneben, von der abgeschnittenen Ecke
    an; jede fünfte ist tiefer. Miss mit dem Messschieber den langen Schlitz, seine Länge in x und
    seine Breite in y, und die letzte Stufe beider Arme, neben ihrer Wurzel. Such von Hand in jedem
    Schlitz die erste Stufe, die die Zunge des Zapfens mit einem Druck aufnimmt, und an jedem Arm
    die letzte Stufe, die so in den langen Schlitz geht.
measuring-typed = Tippe, was du abliest, in start-here.html neben den Maßen der Platte ein: Die
    Seite berechnet, was der Fräser wirklich schneidet, und sagt, was an der Maschine liegt.
measuring-crossing = Die Kerbe im Zapfen ist so tief wie die tiefste des Plans: Schieb sie über die
    Kante des Brettchens, um zu fühlen, wie eine lange Verbindung geht. Sie geht nur dann wie
    geplant, wenn die Platte so dick ist wie gezeichnet.
measuring-rule = Um wie viel die Schlitze im Mittel breiter sind als gezeichnet und die Arme
    schmaler, so viel schneidet der Fräser zu breit. Korrigiere das einmal: Gib deinem Fräsprogramm
    diesen Durchmesser, { $cut } für { $cutter }, und schneide die Dateien, wie sie sind.
measuring-built = Wo man ihm das nicht sagen kann, macht start-here.html Dateien, in denen es schon
    berücksichtigt ist und die es in Name und Notiz sagen. Tu nie beides.
measuring-without = Ohne Messschieber nennt die Stufe, die die Zunge mit einem Druck aufnimmt, eine
    Dicke in der Tabelle, und die, was du nimmst. Sie fasst Platte und Fräser zusammen: Die Schlitze
    stimmen dann, aber Zapfen werden um das schmaler, was der Fräser zu breit schneidet, und die,
    die durchgehen, zu lang oder zu kurz.
measuring-lies = 0,0 der Datei ist die linke untere Ecke des Brettchens; kleb Brettchen und Zapfen
    nieder.
measuring-play = Stramm in jeder Stufe: Miss die Platte noch einmal, oder such nach Spänen und einem
    stumpfen Fräser. Locker in jeder Stufe: Die Platte ist dünner, als die Passprobe prüft, oder der
    Fräser läuft unrund.
measuring-arms = Die Stufen der Arme sind von der Spitze an { $steps } breit gezeichnet, der lange
    Schlitz { $long } lang.
