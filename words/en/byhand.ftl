# Whether a plan can be cut with hand tools, and what stands in the way.
byhand-verdict-yes = Can be cut by hand: drill, jigsaw and file will do.
byhand-verdict-care = Can be cut by hand with care.
byhand-verdict-no = Not for cutting by hand as it is.
byhand-effort = About { $way } to saw.
byhand-effort-drilling = About { $way } to saw, { $drilled } to drill.
byhand-holes = { $count ->
    [one] { $count } hole
   *[other] { $count } holes
 }
byhand-corners = { $count ->
    [one] { $count } inside corner
   *[other] { $count } inside corners
 }
byhand-much = Much to saw
byhand-much-text = { $way } of sawing want days.
byhand-corner = Corners
byhand-corner-text = A saw turns no square corner: bore the small circles of the templates first.
    They open the corners of tabs and slots, so that what is square goes home. Where a bore would be
    seen, square the corner with a file or a chisel instead.
byhand-driven = Joints that are driven in
byhand-driven-text = The closest have { $play } of play on each side, less than a hand can saw and
    file to.
byhand-close = Close joints
byhand-close-text = The closest have { $play } of play on each side. Saw beside the line, in the
    waste, and file to it, trying with an offcut of the sheet, until it goes in with the push of a
    hand.
byhand-narrow = Narrow openings
byhand-narrow-text = Openings ({ $parts }) are under { $unit ->
    [in] 1/8 in
   *[mm] 3 mm
 } wide: no blade can be steered there.
byhand-recess = Recesses
byhand-recess-text = Recesses ({ $parts }) go part of the way through: clear them with a hand
    router along a batten, or saw and chisel their walls and pare the floor, measuring its depth
    often.
byhand-bores = Bores to a depth
byhand-bores-text = Some holes end in the wood, or are wider at the face ({ $parts }): bore the
    wide part first, with a bit that leaves a flat floor and a stop set to its depth.
byhand-tilted = Tilted joints
byhand-tilted-text = Some pieces stand at a slant. Their joints hold it only if every wall is square
    to the face: guide the blade, and set the angle with a bevel when you put it together.
byhand-small = Small pieces
byhand-small-text = { $parts }: under { $unit ->
    [in] 2 in
   *[mm] 50 mm
 } wide, too small to hold under a jigsaw. Clamp the sheet and saw them free last, or take a coping
    saw.
byhand-art = Engraving
byhand-art-text = Engraving ({ $parts }) cannot be cut by hand. Trace it with a pencil, so
    that steps which go by it still tell, or leave it out.
