# A plan in one line.
pagefacts-sheets = { $count ->
    [one] { $count } sheet
   *[other] { $count } sheets
 }
pagefacts-boards = { $count ->
    [one] { $count } board
   *[other] { $count } boards
 }
pagefacts-pieces = { $count ->
    [one] { $count } piece
   *[other] { $count } pieces
 }
