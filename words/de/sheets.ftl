# Was auf der Maschine liegt, Platte für Platte.
sheets-title = Stücke auf Platten
sheets-one = Platte { $number } von { $count }
sheets-told = { $sheet }, gezeichnet für gemessene { $thickness }. { $size }, Sichtseite oben{ $grain ->
    [0] {""}
   *[other] , Faserrichtung von links nach rechts
 }.
sheets-hatched = Schraffiert: bleibt frei für Spannmittel.
sheets-pieces = Stücke auf Platte { $number }
sheets-mark = Zeichen
sheets-piece = Stück
sheets-size = Gesamtmaß
sheets-turned = Gedreht
