# Worte auf Schnittdateien, und wozu ihre Ebenen da sind.
cutfile-measure = Beide Wege nachmessen
cutfile-units = Einheit: mm.
cutfile-zero-middle = Die Mitte der Platte ist 0,0.
cutfile-zero-corner = Die untere linke Ecke der Platte ist 0,0.
cutfile-a-sheet = Platte { $number }
cutfile-sheet = { $plan }, { $sheet }: { $pieces ->
    [one] { $pieces } Stück
   *[other] { $pieces } Stück
 }
cutfile-for = Dateien für { $sheets }
cutfile-part = Teil { $mark }, { $part }: { $count }-mal
cutfile-wider = Teil { $mark }, { $part }: Öffnungen weiter um { $wider }
cutfile-laid = Sichtseite oben; untere Kante an einen Anschlag, linke an einen Stopp
cutfile-laid-zero = 0,0 ist die Ecke von Anschlag und Stopp, z wie beim ersten Schnitt
cutfile-past = Spannen, dann beide wegnehmen: Die Schnitte laufen über sie hinweg
cutfile-inside = Innerhalb dieser Linien schneiden; die Kante des Stücks wird nicht geschnitten
cutfile-art = { $art }, Gravur auf Teil { $mark }, { $part }
cutfile-art-zero = 0,0 ist die Mitte der Gravur: über den Riss auf dem Stück stellen
cutfile-coupon = { $plan }, Passprobe
cutfile-steps = Stufen für { $sheet }, { $range } dick
cutfile-first = Zuerst schneiden: Sie zeigt, was dein Fräser wirklich schneidet.
cutfile-scrap = Braucht ein Reststück von { $size }.
cutfile-cut-for = Geschnitten für { $sheet } mit { $thickness }
cutfile-fit = { $own ->
    [0] Passung { $fit }, { $cutter }
   *[other] Passung { $fit }, manche Verbindungen eine eigene, { $cutter }
 }
cutfile-cutter = Fräser
cutfile-no-cutter = kein Fräser
cutfile-true-cut = wahrer Schnitt
cutfile-built-in = eingerechnet
cutfile-title = { $plan }: { $what }, für { $sheets }
cutfile-wider-openings = { $part }, weitere Öffnungen
cutfile-coupon-for = Passprobe, { $sheet }
cutfile-through = durch die Platte
cutfile-deep = { $depth } tief von der Fläche, die oben liegt
cutfile-layer-sheet-edge = Die Kante der Platte, um die Datei danach auszurichten. Wo 0,0 ist, steht
  dabei. Wird nicht geschnitten.
cutfile-layer-piece-edge = Das Stück, wie es ist, um es danach zu legen. Wo 0,0 ist, steht dabei. Wird nicht geschnitten.
cutfile-layer-check-square = Quadrate von 100 mm und 4 in. Nach dem Öffnen der Datei nachmessen. Wird nicht geschnitten.
cutfile-layer-note = Worte für Menschen: Plan, Ausgabe, Platte, Dicke. Wird nicht geschnitten.
cutfile-layer-bridge = Stege: Über diesen Linien hebt der Fräser auf { $height } über die Unterseite. Sie
  liegen auf der fertigen Kante. Wird nicht geschnitten.
cutfile-layer-engrave = Geritzte Linien, { $depth }: Fräser auf der Linie führen.
cutfile-layer-pocket = Die ganze Fläche innerhalb der Linie ausräumen, { $depth }.
cutfile-layer-hole = Runde Löcher, { $depth }: innerhalb der Linie schneiden oder bohren.
cutfile-layer-opening = Öffnungen und Schlitze, { $depth }: innerhalb der Linie schneiden.
cutfile-layer-outline = Die Kante des Teils selbst, { $depth }: außerhalb der Linie schneiden, zuallerletzt.
