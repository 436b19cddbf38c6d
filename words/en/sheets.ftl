# What lies on the machine, sheet by sheet.
sheets-title = Pieces on sheets
sheets-one = Sheet { $number } of { $count }
sheets-told = { $sheet }, drawn for a measured { $thickness }. { $size }, show face up{ $grain ->
    [0] {""}
   *[other] , grain from left to right
 }.
sheets-hatched = Hatched: kept clear for clamps.
sheets-pieces = Pieces on sheet { $number }
sheets-mark = Mark
sheets-piece = Piece
sheets-size = Overall size
sheets-turned = Turned
