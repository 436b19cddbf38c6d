# Saw sheets and boards.
sawsheet-foot = saw, { $thick }
sawsheet-number = Saw sheet { $number } of { $sheets }
sawsheet-kerf = Kerf { $kerf }.
sawsheet-cuts = { $cuts ->
    [one] { $cuts } cut
   *[other] { $cuts } cuts
 }, { $settings ->
    [one] { $settings } setting
   *[other] { $settings } settings
 } of the fence.
sawsheet-lay = Lay on the saw
sawsheet-how = How
sawsheet-size = Size, { $unit }
sawsheet-gives = Gives
sawsheet-way-rip = Rip
sawsheet-way-cross-cut = Cross-cut
sawsheet-way-trim = Trim { $edges } edge
sawsheet-edge-lower = lower
sawsheet-edge-left = left
sawsheet-left-on = Left on blanks of shaped parts, to be cut to the outline: { $blanks }.
sawsheet-left-left = { $size } left
sawsheet-left-below = { $size } below
sawsheet-left-right = { $size } right
sawsheet-left-above = { $size } above
sawsheet-boards = Boards: { $board }
sawsheet-of-length = { $count } of { $length }
sawsheet-buy = Buy { $boards }.
sawsheet-least = No choice of the lengths sold is shorter in all.
sawsheet-near-least = In all { $bought }; none can be shorter than { $bound }.
sawsheet-board-kerf = On each board kerf { $kerf }.
sawsheet-board-trimmed = On each board { $trim } trimmed off one end, kerf { $kerf }.
sawsheet-board = Board
sawsheet-length = Length
sawsheet-pieces = Pieces in the order they are cut
sawsheet-over = Left over
sawsheet-called-sheet = sheet
sawsheet-called-strip = strip { $name }
sawsheet-called-block = block { $name }
sawsheet-called-rough = { $name } rough
sawsheet-called-piece = { $name }
