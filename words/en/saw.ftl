# How a saw cuts sheets and boards.
saw-title = With a table saw or a track saw
saw-sizes = The { $parts } has every overall size. Take a { $template } for parts with curves and
    slots.
saw-parts-list = parts list
saw-template = template
saw-files = The saw sheets have every cut in order, with every setting of the fence: { $one } or
    { $other }.
saw-caution = At the saw
saw-sheet = Sheet { $number } of { $count }, { $sheet }: { $cuts ->
    [one] { $cuts } cut
   *[other] { $cuts } cuts
 } from edge to edge in the order of their numbers, { $settings ->
    [one] { $settings } setting
   *[other] { $settings } settings
 } of the fence.
saw-boards = Boards
saw-trim = Trim { $trim } off one end to begin square, then cut in the order drawn; the saw takes
    { $kerf } beyond each length.
