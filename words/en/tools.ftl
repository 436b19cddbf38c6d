# The tools, and what they use up.
tools-caliper = Caliper
tools-thickness = { $unit ->
    [in] the sheet’s thickness, to 0.001 in (0.03 mm)
   *[mm] the sheet’s thickness, to 0.05 mm (0.002 in)
 }
tools-router = with a CNC router
tools-router-wide = with a CNC router, { $wide } wide
tools-drill = Drill bit, { $wide }
tools-holes = { $count ->
    [one] { $count } hole in { $parts }
   *[other] { $count } holes in { $parts }
 }
tools-edges = { $count ->
    [one] { $count } bore into an edge of { $parts }
   *[other] { $count } bores into edges of { $parts }
 }
tools-holes-deep = { $holes }, { $deep } deep
tools-holes-for = { $holes }: { $bored }
tools-sunk = what a head sinks into
tools-pilot = pilot holes for { $items }
tools-bored = for { $items }
tools-steps = { $count ->
    [one] step { $steps }
   *[other] steps { $steps }
 }
tools-glue = Wood glue, for the joints
tools-finish-before = { $finish }, for { $coats ->
    [one] { $coats } coat
   *[other] { $coats } coats
 } before it is put together
tools-finish-after = { $finish }, for { $coats ->
    [one] { $coats } coat
   *[other] { $coats } coats
 } once it stands
