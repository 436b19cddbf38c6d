# Wörter der Seiten: setup.
pagesetup-title = Einrichtblätter
pagesetup-head = { $plan }, Einrichtblätter
pagesetup-about = Wie die Platten von { $plan }, Ausgabe { $release }, auf der Maschine liegen.
pagesetup-lead = Ausgabe { $release }, für die Dateien in { $folder }. { $sheets ->
    [one] { $sheets } Platte
   *[other] { $sheets } Platten
 }{ $arts ->
    [0] {""}
    [one] , { $arts } Gravur für fertige Stücke
   *[other] , { $arts } Gravuren für fertige Stücke
 }. Dieselben Blätter liegen im Paket in { $setup }, je eine Seite, auf A4 und auf US Letter.
pagesetup-cuts = Schnitte
pagesetup-operation = Arbeitsgang
pagesetup-cutter = Fräser
pagesetup-depth = Tiefe
pagesetup-passes = Durchgänge
pagesetup-time = Zeit
pagesetup-by-hand = Von Hand
pagesetup-scrap = Schneide das zuerst, aus einem Rest von { $size }
pagesetup-its-file = Seine Datei liegt in { $folder }
pagesetup-sheet = Platte { $number } von { $count }
pagesetup-measured = { $sheet }, gemessen { $thickness }
pagesetup-lies = { $size }, Sichtseite oben
pagesetup-lies-grain = { $size }, Sichtseite oben, Faser entlang x
pagesetup-zero = Null x, y
pagesetup-zero-z = Null z
pagesetup-spoilboard = In die Opferplatte
pagesetup-lines = Gezeichnete Linien
pagesetup-clamp = Klemmen bei
pagesetup-moves = Wege über der Platte und Fräserwechsel: { $time }.
pagesetup-compare = Vergleiche
pagesetup-deep-on = { $depth } tief, auf { $pieces }
pagesetup-art = Das Motiv misst { $size }; seine eigene Datei ist { $file }
