# Was entscheidet, ob man es baut.
deciding-head-size = Größe
deciding-head-material = Material
deciding-head-thickness = Plattendicke
deciding-head-cost = Kosten
deciding-head-time = Zeit
deciding-head-difficulty = Wie schwierig
deciding-head-hands = Hände
deciding-head-tools = Werkzeug
deciding-head-bed = Tisch der Fräse
deciding-sides = Breite × Tiefe × Höhe
deciding-mass-all = { $mass } mit Brettern und Beschlägen
deciding-mass-boards = { $mass } mit Brettern
deciding-mass-hardware = { $mass } mit Beschlägen
deciding-mass-without = etwa { $mass }, ohne { $items }
deciding-size-enough = { $size }; { $enough }
deciding-enough = ein Stück von { $size } genügt
deciding-one-enough = von einer davon genügt ein Stück von { $size }
deciding-drawn = gezeichnet für { $thickness }
deciding-sets = { $sets ->
    [one] { $sets } Satz Dateien steht bereit
   *[other] { $sets } Sätze Dateien stehen bereit
 }
deciding-long = { $length } lang
deciding-no-prices = keine Preise bekannt
deciding-from = ab { $total }
deciding-unpriced = { $unknown ->
    [one] für { $unknown } Zeile der Liste ist kein Preis bekannt
   *[other] für { $unknown } Zeilen der Liste ist kein Preis bekannt
 }
deciding-all-priced = alles inbegriffen
deciding-cutting = etwa { $time } zum Schneiden
deciding-building = etwa { $time } zum Zusammenbauen
deciding-alone = Eine Person
deciding-alone-for = für Platten und Schritte gleichermaßen
deciding-helped = Eine Person, zeitweise mit Hilfe
deciding-lift-step = { $people ->
    [2] zu zweit für das, was in Schritt { $step } bewegt wird, { $mass }
   *[other] mehr als zwei für das, was in Schritt { $step } bewegt wird, { $mass }
 }
deciding-lift-sheet = { $people ->
    [2] zu zweit für die ganze Platte, { $mass }
   *[other] mehr als zwei für die ganze Platte, { $mass }
 }
deciding-tools = { $count ->
    [one] { $count } Werkzeug
   *[other] { $count } Werkzeuge
 }
deciding-tools-under = aufgezählt unter { $need }
deciding-bed-alone = Stück für Stück gefräst
deciding-bed-laid = ganze Platten, wie sie belegt sind, brauchen { $size }
deciding-bed-off = Zu groß für einen Tisch von { $bed }
