# The parts: a list, their pictures, and where to mark what is cut into them.
parts-title = Parts
parts-mark = Mark
parts-part = Part
parts-count = Count
parts-size = Overall size
parts-weight = Each weighs
parts-together = Together
parts-grain-width = grain along the width
parts-grain-height = grain along the height
parts-remark = For { $sheets }. Sizes are overall, with tabs: width first, then height, as the part
    is drawn; inches to 1/32. The mark stands on the part in every drawing and file.
parts-faces = Each part from its show face, the face the cutter enters, all at one scale, { $scale }.
    Dark areas are cut to a depth only. The arrow is the grain of the face.
parts-one = { $marks } { $part }, { $pieces ->
    [one] { $pieces } piece
   *[other] { $pieces } pieces
 }
parts-places = To mark by hand: where holes, slots and recesses lie
parts-middles = Middles are measured from the left edge and from the lower edge of the part as it is
    drawn above, tabs and all; of a notch it is the middle of its bottom. Widths of slots are for
    { $sheets }; on another sheet a slot is wider or narrower by as much as the sheet.
parts-place-what = What
parts-place-left = From the left, { $unit }
parts-place-up = From below, { $unit }
parts-place-length = Drill, or length, { $unit }
parts-place-width = Width, { $unit }
parts-place-depth = Depth, { $unit }
parts-place-lies = Lies
parts-cut-wide = Wide bore
parts-cut-bore = Bore into the edge
parts-cut-hole = Hole
parts-cut-slot = Slot
parts-cut-notch = Notch
parts-cut-groove = Groove
parts-cut-pocket = Recess
parts-cut-window = Opening
parts-through = through
parts-level = level
parts-upright = upright
parts-turned = turned { $angle }
