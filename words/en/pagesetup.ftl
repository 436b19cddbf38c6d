# Words of pages: setup.
pagesetup-title = Setup sheets
pagesetup-head = { $plan }, setup sheets
pagesetup-about = How the sheets of { $plan }, release { $release }, lie on the machine.
pagesetup-lead = Release { $release }, for the files in { $folder }. { $sheets ->
    [one] { $sheets } sheet
   *[other] { $sheets } sheets
 }{ $arts ->
    [0] {""}
    [one] , { $arts } engraving to add to finished pieces
   *[other] , { $arts } engravings to add to finished pieces
 }. The same sheets are in the bundle in { $setup }, a page each, on A4 and on US Letter.
pagesetup-cuts = Cuts
pagesetup-operation = Operation
pagesetup-cutter = Cutter
pagesetup-depth = Depth
pagesetup-passes = Passes
pagesetup-time = Time
pagesetup-by-hand = By hand
pagesetup-scrap = Cut this first, on a scrap of { $size }
pagesetup-its-file = Its file is in { $folder }
pagesetup-sheet = Sheet { $number } of { $count }
pagesetup-measured = { $sheet }, measured { $thickness }
pagesetup-lies = { $size }, show face up
pagesetup-lies-grain = { $size }, show face up, grain along x
pagesetup-zero = Zero x, y
pagesetup-zero-z = Zero z
pagesetup-spoilboard = Into spoilboard
pagesetup-lines = Drawn lines
pagesetup-clamp = Clamp at
pagesetup-moves = Moves above the sheet and changes of cutter: { $time }.
pagesetup-compare = Compare
pagesetup-deep-on = { $depth } deep, on { $pieces }
pagesetup-art = The art is { $size }; its own file is { $file }
