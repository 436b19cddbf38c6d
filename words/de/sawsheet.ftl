# Sägepläne und Bretter.
sawsheet-foot = Sägen, { $thick }
sawsheet-number = Sägeplan { $number } von { $sheets }
sawsheet-kerf = Schnittfuge { $kerf }.
sawsheet-cuts = { $cuts ->
    [one] { $cuts } Schnitt
   *[other] { $cuts } Schnitte
 }, { $settings ->
    [one] { $settings } Einstellung
   *[other] { $settings } Einstellungen
 } des Anschlags.
sawsheet-lay = Auf die Säge legen
sawsheet-how = Wie
sawsheet-size = Maß, { $unit }
sawsheet-gives = Ergibt
sawsheet-way-rip = Längs
sawsheet-way-cross-cut = Quer
sawsheet-way-trim = Kante besäumen: { $edges }
sawsheet-edge-lower = unten
sawsheet-edge-left = links
sawsheet-left-on = Übermaß an den Rohlingen geformter Teile, bis zum Umriss wegzuschneiden:
  { $blanks }.
sawsheet-left-left = { $size } links
sawsheet-left-below = { $size } unten
sawsheet-left-right = { $size } rechts
sawsheet-left-above = { $size } oben
sawsheet-boards = Bretter: { $board }
sawsheet-of-length = { $count } von { $length }
sawsheet-buy = Kaufe { $boards }.
sawsheet-least = Keine Auswahl der verkauften Längen ist zusammen kürzer.
sawsheet-near-least = Zusammen { $bought }; keine Auswahl kann kürzer sein als { $bound }.
sawsheet-board-kerf = Je Brett: Schnittfuge { $kerf }.
sawsheet-board-trimmed = Je Brett: { $trim } an einem Ende besäumt, Schnittfuge { $kerf }.
sawsheet-board = Brett
sawsheet-length = Länge
sawsheet-pieces = Stücke in der Reihenfolge des Schneidens
sawsheet-over = Rest
sawsheet-called-sheet = Platte
sawsheet-called-strip = Streifen { $name }
sawsheet-called-block = Block { $name }
sawsheet-called-rough = { $name } roh
sawsheet-called-piece = { $name }
