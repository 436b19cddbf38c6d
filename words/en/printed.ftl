# What printed sheets share, layouts, setup sheets.
printed-title-setup = { $plan }: setup sheets
printed-title-coupon = { $plan }: setup of the fit coupon
printed-title-layout = { $plan }: layout
printed-title-saw = { $plan }: saw sheets
printed-title-art = { $plan }: engravings
printed-title-templates = { $plan }: templates
printed-subject-setup = Setup sheets for { $plan }, release { $version }
printed-subject-coupon = Setup of the fit coupon for { $plan }, release { $version }
printed-subject-layout = Layout for { $plan }, release { $version }
printed-subject-saw = Saw sheets for { $plan }, release { $version }
printed-subject-art = Engravings for { $plan }, release { $version }
printed-subject-templates = Full-size templates for { $plan }, release { $version }
printed-release = release { $version }
printed-page = Page { $page } of { $pages }
printed-caution = Caution
printed-safety = Safety
printed-foot-layout = layout, { $thick }
printed-foot-setup = setup, { $thick }
printed-foot-art = engravings, { $thick }
printed-foot-coupon = setup, fit coupon
printed-kicker-setup = setup
printed-kicker-art = engraving, zero at the centre
printed-kicker-coupon = setup, cut this first
printed-fit-coupon = Fit coupon
printed-coupon-drawn = { $sheet }, drawn at { $thickness }
printed-scrap = A scrap of { $size }, show face up
printed-art-deep = { $depth } deep, on { $marks }
printed-art-size = The art is { $size }
printed-art-too-large = The art is larger than this page: for its full size print the file of the
  art.
printed-drawn-for = { $sheet }, drawn for a measured { $thickness }
printed-measured = { $sheet }, measured { $thickness }
printed-sheet-number = Sheet { $number } of { $sheets }
printed-lies = { $grain ->
    [0] { $size }, show face up
   *[other] { $size }, show face up, grain along x
 }
printed-sheet-lies = { $grain ->
    [0] { $size }, show face up.
   *[other] { $size }, show face up, grain from left to right.
 }
printed-hatched = Hatched: kept clear for clamps.
printed-mark = Mark
printed-piece = Piece
printed-overall = Overall size
printed-turned = Turned
printed-cutter = Cutter { $number }
printed-cuts = Cuts
printed-steps = Steps
printed-by-hand = By hand
printed-clamp = Clamp at
printed-depth = Depth
printed-compare = Compare
printed-between = moves above the sheet, changes of cutter
printed-own-cutter = Cutters, passes and times are the plan’s own; with another cutter choose yours,
  and try them.
printed-zero = Zero x, y
printed-zero-z = Zero z
printed-spoilboard = Into spoilboard
printed-drawn-lines = Drawn lines
