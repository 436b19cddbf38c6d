# Words on cut files, and what their layers are for.
cutfile-measure = Measure both ways
cutfile-units = Units: mm.
cutfile-zero-middle = Middle of the sheet is 0,0.
cutfile-zero-corner = Lower left corner of the sheet is 0,0.
cutfile-a-sheet = sheet { $number }
cutfile-sheet = { $plan }, { $sheet }: { $pieces ->
    [one] { $pieces } piece
   *[other] { $pieces } pieces
 }
cutfile-for = Files for { $sheets }
cutfile-part = Part { $mark }, { $part }: cut { $count }
cutfile-wider = Part { $mark }, { $part }: openings wider by { $wider }
cutfile-laid = Show face up; lower edge to a fence, left edge to a stop
cutfile-laid-zero = 0,0 is the corner of fence and stop, z as for the first cut
cutfile-past = Clamp it, then take both away: the cuts run over them
cutfile-inside = Cut inside these lines; the piece’s edge is not cut
cutfile-art = { $art }, engraved on part { $mark }, { $part }
cutfile-art-zero = 0,0 is the middle of the art: set it over the mark on the piece
cutfile-coupon = { $plan }, fit coupon
cutfile-steps = Steps for { $sheet }, { $range } thick
cutfile-first = Cut this first: it tells what your cutter really cuts.
cutfile-scrap = Takes a scrap of { $size }.
cutfile-cut-for = Cut for { $sheet } at { $thickness }
cutfile-fit = { $own ->
    [0] Fit { $fit }, { $cutter }
   *[other] Fit { $fit }, some joints their own, { $cutter }
 }
cutfile-cutter = cutter
cutfile-no-cutter = no cutter
cutfile-true-cut = true cut
cutfile-built-in = built in
cutfile-title = { $plan }: { $what }, for { $sheets }
cutfile-wider-openings = { $part }, wider openings
cutfile-coupon-for = fit coupon, { $sheet }
cutfile-through = through the sheet
cutfile-deep = { $depth } deep from the face that lies up
cutfile-layer-sheet-edge = The edge of the sheet, to place the file by. The note says where 0,0 is. Not
  cut.
cutfile-layer-piece-edge = The piece as it is, to lay it by. The note says where 0,0 is. Not cut.
cutfile-layer-check-square = Squares of 100 mm and of 4 in. Measure them after opening the file. Not cut.
cutfile-layer-note = Words for people: plan, release, sheet, thickness. Not cut.
cutfile-layer-bridge = Bridges: over these lines the cutter lifts to { $height } above the lower face.
  They lie on the finished edge. Not cut.
cutfile-layer-engrave = Lines scratched { $depth }: run the cutter on the line.
cutfile-layer-pocket = Clear the whole area inside the line, { $depth }.
cutfile-layer-hole = Round holes, { $depth }: cut inside the line, or drill.
cutfile-layer-opening = Openings and slots, { $depth }: cut inside the line.
cutfile-layer-outline = The part’s own edge, { $depth }: cut outside the line, last of all.
