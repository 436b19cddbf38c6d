# An engraving that is cut on a finished piece.
setupart-title = { $art } on { $mark }, { $part }
setupart-size = { $wide } wide, { $high } high
setupart-strokes = { $size }, strokes { $stroke } wide
setupart-strokes-uneven = { $size }, strokes { $stroke } wide; where the sheet lies { $off } lower or
    higher, { $narrow } to { $most }
setupart-mark-straight = Mark the centre of the art on the piece: { $one } and { $other } from the
    edges drawn thick, square to them.
setupart-mark-curved = Mark the centre of the art on the piece: { $one } and { $other } from rules
    laid against the sides drawn thick.
setupart-fix = Fix the piece as drawn, x to the right, the art’s side up. Check both distances
    again.
setupart-zero = Zero x and y over the mark, z on the face.
setupart-run = Run the file of the art alone: its 0,0 is the middle of the art.
