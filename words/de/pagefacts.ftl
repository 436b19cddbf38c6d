# Ein Plan in einer Zeile.
pagefacts-sheets = { $count ->
    [one] { $count } Platte
   *[other] { $count } Platten
 }
pagefacts-boards = { $count ->
    [one] { $count } Leiste
   *[other] { $count } Leisten
 }
pagefacts-pieces = { $count ->
    [one] { $count } Stück
   *[other] { $count } Stück
 }
