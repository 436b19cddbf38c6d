# Pictures: labels, titles, and what they show in words.
drawing-lines = A template's shaded edge, its slot with bored corners, a hole, and two bars
drawing-offcut = An offcut stands on its edge, one face on a slot's line; a mark at the other
drawing-an-offcut = offcut
drawing-a-mark = mark
drawing-a-line = line
drawing-grain = grain
drawing-sheet = { $plan }: sheet { $sheet }
drawing-sheet-shows = A sheet of { $wide } by { $high } with the pieces { $pieces }.
drawing-too-small = Too small to mark: { $pieces }
drawing-too-short = Too short to number: { $count ->
    [one] cut { $cuts }
   *[other] cuts { $cuts }
 }.
drawing-too-narrow = Too narrow to mark: { $pieces }
drawing-too-narrow-many = Too narrow to mark: { $count ->
    [one] { $count } piece
   *[other] { $count } pieces
 }, see the list
drawing-pieces = { $count ->
    [one] { $count } piece
   *[other] { $count } pieces
 }
drawing-measuring = Where to measure
drawing-measuring-shows = A sheet with eight points: near the corners and at the middle of each side.
drawing-art = { $plan }: { $art } on { $part }
drawing-art-shows = The middle of the art lies { $one } and { $other } from the edges marked.
drawing-art-check = { $length }, if this is printed at full size
drawing-art-full = { $plan }: { $art } at full size
drawing-art-full-shows = The art at full size, { $wide } wide and { $high } high, with a crosshair through
  its middle.
drawing-together = Put together
drawing-together-shows = Put together it is { $wide } wide, { $deep } deep and { $high } high.
drawing-apart = All pieces drawn apart
drawing-apart-shows = The pieces { $pieces }, drawn apart.
drawing-plan-together = { $plan }: put together, with its overall sizes
drawing-plan-apart = { $plan }: its pieces apart
drawing-plan-set = { $plan }: the whole set, with its overall sizes
drawing-plan-step = { $plan }, step { $step }
drawing-step = Step { $step }
drawing-step-set-down = New: { $count ->
    [one] piece
   *[other] pieces
 } { $pieces } set down{ $below ->
    [0] {""}
   *[other] , seen from below
 }.
drawing-step-moving = New: { $count ->
    [one] piece
   *[other] pieces
 } { $pieces } moving { $way }{ $standing ->
    [0] {""}
   *[other] {" "}to the { $standing } that stand
 }{ $below ->
    [0] {""}
   *[other] , seen from below
 }.
drawing-step-hardware = Hardware drawn out of its places in the { $standing ->
    [one] piece that stands
   *[other] { $standing } pieces that stand
 }.
drawing-bore = ø { $wide }, { $deep } deep
drawing-bores-show = { $pieces }, a bit with a stop before each bore: { $bores }.
drawing-step-boards = New from boards: { $boards }.
drawing-wall-behind = The wall is behind it.
drawing-step-lying = { $piece } lies on a mat.
drawing-step-alike = { $count } alike, the same for each.
drawing-step-turn = Number { $turn }: { $pieces }.
drawing-step-held = Somebody holds { $pieces }.
drawing-step-apart = { $one } and { $other } stand { $far } apart, middle to middle.
drawing-step-overhang = { $piece } reaches { $far } past what bears it, at the { $side ->
    [left] left
   *[right] right
 }.
drawing-step-height = The upper edge of { $board } is { $far } above the floor.
drawing-larger-joint = Drawn larger{ $way ->
    [below] , seen from below
    [above] , seen from above
    [behind] , seen from behind
    [left] , seen from the left
    [right] , seen from the right
   *[plain] {""}
 }: how { $one } and { $other } meet{ $count ->
    [one] {""}
   *[other] , as at { $count } places in all
 }.
drawing-larger-fastening = Drawn larger: { $item } before its place.
drawing-larger-nut = Drawn larger: { $item } before its hole, its slot along the way of the bolt.
drawing-way-left = left
drawing-way-right = right
drawing-way-to-front = to the front
drawing-way-to-back = to the back
drawing-way-down = down
drawing-way-up = up
drawing-seen-from-below = Seen from below
drawing-turn-over = Turn it over
drawing-turn-side = Lay it on its side
drawing-turn-up = Stand it up
drawing-turn-round = Turn it round
drawing-step-turned = What stands lay otherwise before; an arrow shows how it is turned.
drawing-glue = Glue
drawing-glue-shows = { $pieces }, opened out, the faces that get glue hatched.
drawing-marks-show = { $pieces }, what is marked out with its distances from the sides.
drawing-sand = { $grit ->
    [0] Sand
   *[other] Sand, grit { $grit }
 }
drawing-sand-shows = { $pieces }, what is sanded hatched, a block on it.
drawing-clamp = { $count ->
    [one] clamp
   *[other] clamps
 }
drawing-clamped-for = leave on for { $time }
drawing-clamps-show = { $count ->
    [one] One clamp presses
   *[other] { $count } clamps press
 } { $pieces } together.
drawing-seen-from-above = Seen from above
drawing-seen-from-behind = Seen from behind
drawing-seen-from-left = Seen from the left
drawing-seen-from-right = Seen from the right
drawing-hardware = Hardware at full size
drawing-hardware-shows = At full size, from the side and from the head: { $pieces }.
drawing-in-x = in x
drawing-in-y = in y
drawing-coupon = { $plan }: fit coupon for { $sheet }
drawing-coupon-step = step { $step }, { $wide } wide, is for { $thick } sheets
drawing-coupon-shows = An angle with two slots that grow in steps, one across each direction, and a tab
  with two stepped arms to try in its long slot: { $slots }.
drawing-part = { $plan }: part { $mark }, { $part }
drawing-part-shows = { $wide } wide, { $high } high, seen from the show face.
drawing-grain-along-x = Grain along x.
drawing-grain-along-y = Grain along y.
drawing-faces-both = both faces
drawing-faces-show = show face only
drawing-faces-back = back face only
drawing-rounded = rounded over { $radius }, { $faces }
drawing-banded = banded: { $band }; sizes are without it
drawing-edge-square = left square, as cut
drawing-edge-ease = eased: fine paper takes the sharpness off
drawing-edge-mask = masked: left square, no finish on it
drawing-machine-sheet = { $plan }: sheet { $sheet } on the machine
drawing-machine-coupon = { $plan }: fit coupon on the machine
drawing-machine-shows = A sheet of { $wide } by { $high }; 0,0 is { $zero }; { $clamps }.
drawing-scrap-shows = A scrap of { $wide } by { $high }; 0,0 is the lower left corner of the plate.
drawing-zero-middle = the middle
drawing-zero-corner = the lower left corner
drawing-clamps = { $spots ->
    [0] no edge has room for a clamp
   *[other] { $spots } spots to clamp are hatched
 }
drawing-operation-engrave = engravings
drawing-operation-pocket = pockets
drawing-operation-hole = holes
drawing-operation-opening = openings
drawing-operation-outline = outlines
drawing-bridges = bridges
drawing-saw = { $plan }: saw sheet { $sheet }
drawing-saw-shows = A sheet of { $wide } by { $high }, { $turned ->
    [0] ripped first
   *[other] cross-cut first
 }: { $cuts } cuts with { $settings } settings of the fence. It gives the blanks { $blanks }.
drawing-left-over = left over
drawing-left-over-size = left over { $size }
drawing-boards = { $title }: { $count ->
    [one] { $count } board
   *[other] { $count } boards
 }
drawing-board-shows = board { $board }, { $length }: { $pieces }
drawing-board = { $count ->
    [1] Board { $first }
    [2] Boards { $first } and { $last }, cut alike
   *[other] Boards { $first } to { $last }, cut alike
 }
drawing-yard = { $plan }: sheet { $sheet } at the yard
drawing-yard-shows = A sheet with { $cuts } straight cuts between its pieces.
drawing-change = { $part }: before and now
drawing-change-shows = The older outline, dashed, over the newer one. { $count ->
    [0] Nothing that meets other pieces moved.
    [one] One place that meets other pieces moved.
   *[other] { $count } places that meet other pieces moved.
 }
