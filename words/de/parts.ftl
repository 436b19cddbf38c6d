# Die Teile: eine Liste, ihre Bilder, und wo anzureißen ist, was in sie geschnitten wird.
parts-title = Teile
parts-mark = Zeichen
parts-part = Teil
parts-count = Anzahl
parts-size = Gesamtmaß
parts-weight = Eines wiegt
parts-together = Zusammen
parts-grain-width = Faserrichtung entlang der Breite
parts-grain-height = Faserrichtung entlang der Höhe
parts-remark = Für { $sheets }. Die Maße sind Gesamtmaße, mit Zapfen: erst die Breite, dann die Höhe,
    so wie das Teil gezeichnet ist; Zoll auf 1/32. Das Zeichen steht auf dem Teil in jeder Zeichnung
    und Datei.
parts-faces = Jedes Teil von seiner Sichtseite, in die der Fräser eintaucht, alle in einem Maßstab,
    { $scale }. Dunkle Flächen sind nur bis zu einer Tiefe geschnitten. Der Pfeil ist die
    Faserrichtung der Oberfläche.
parts-one = { $marks } { $part }, { $pieces ->
    [one] { $pieces } Stück
   *[other] { $pieces } Stücke
 }
parts-places = Zum Anreißen von Hand: wo Löcher, Schlitze und Vertiefungen liegen
parts-middles = Mitten sind von der linken und von der unteren Kante des Teils gemessen, so wie es
    oben gezeichnet ist, samt Zapfen; bei einer Ausklinkung ist es die Mitte ihres Grundes. Breiten
    von Schlitzen gelten für { $sheets }; bei einer anderen Platte ist ein Schlitz um so viel
    breiter oder schmaler wie die Platte.
parts-place-what = Was
parts-place-left = Von links, { $unit }
parts-place-up = Von unten, { $unit }
parts-place-length = Bohrer oder Länge, { $unit }
parts-place-width = Breite, { $unit }
parts-place-depth = Tiefe, { $unit }
parts-place-lies = Liegt
parts-cut-wide = Weite Bohrung
parts-cut-bore = Bohrung in die Kante
parts-cut-hole = Loch
parts-cut-slot = Schlitz
parts-cut-notch = Ausklinkung
parts-cut-groove = Nut
parts-cut-pocket = Vertiefung
parts-cut-window = Öffnung
parts-through = durch
parts-level = waagerecht
parts-upright = senkrecht
parts-turned = gedreht um { $angle }
