# Templates: tiles, their maps, places on parts.
tiles-page = page { $page } of { $pages }
tiles-cut = cut { $count }
tiles-overall = { $wide } wide, { $high } high
tiles-print-at = print at 100 %
tiles-whole = whole
tiles-tile = Tile { $tile }
tiles-place = tile { $tile }: row { $row } of { $rows }, column { $column } of { $columns }
tiles-full-size = { $part } at full size, { $where }
tiles-side-by-side = The tiles { $tiles } laid side by side
tiles-lie = How the tiles lie
tiles-on-pages = { $tiles ->
    [one] { $tiles } tile
   *[other] { $tiles } tiles
 } on pages { $first } to { $last }, named by row from the top and column from the left.
tiles-blank = { $blank ->
    [one] { $blank } without a line is grey and not printed.
   *[other] { $blank } without a line are grey and not printed.
 }
tiles-laying = Trim one of two neighbours along the dashed line, lay cross on cross, and tape.
  Neighbours share { $overlap }.
tiles-head-middle = Middle of
tiles-head-left = From left
tiles-head-below = From below
tiles-more = { $count ->
    [one] { $count } more is measured on the tiles.
   *[other] { $count } more are measured on the tiles.
 }
