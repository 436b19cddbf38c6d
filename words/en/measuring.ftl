# How a sheet is measured and its files are chosen.
measuring-measure = A sheet is seldom as thick as its name. Measure yours with a caliper that shows
    { $unit ->
    [in] 0.001 in, at eight points 2 in (50 mm)
   *[mm] 0.05 mm, at eight points 50 mm (2 in)
 } in from the edges: near the four corners and at the middle of each side, as EN 324-1 does. A burr
    or a raised corner counts as sheet: brush the edge clean first.
measuring-points = Eight points, { $unit ->
    [in] 2 in
   *[mm] 50 mm
 } in from the edges.
measuring-yard = Take a caliper: ask what a sheet measures, not what it is called. The thickest
    reading counts.
measuring-counts = The thickest reading counts, since that place has to go in, too; where the sheet
    is thinner, its joints have so much more play.
measuring-type = One reading will do, eight are better. Type them as the caliper shows them, { $unit ->
    [in] in inches or in millimetres
   *[mm] with a point or a comma, in mm or in inches
 }:
measuring-sets-made = Every slot follows the thickness of your sheet. Ready-made is one whole set of
    cut files for each thickness in the table; the name of a folder, and of every file in it, is the
    thickness it is for. Rounded to { $unit ->
    [in] 0.005 in
   *[mm] 0.1 mm
 }, the thickest reading names the set to take; where there is none of just that thickness, files are
    made for what you measured.
measuring-sets-next = Every slot follows the thickness of your sheet. Ready-made is one whole set of
    cut files for each thickness in the table; the name of a folder, and of every file in it, is the
    thickness it is for. Rounded to { $unit ->
    [in] 0.005 in
   *[mm] 0.1 mm
 }, the thickest reading names the set to take; where there is none of just that thickness, take the
    next thicker.
measuring-each = Look up each of the sheets by itself.
measuring-ready = Every slot follows the thickness of your sheet. Ready-made is one set of cut
    files, for { $thickness }: on a thicker sheet its joints will not go in, on a thinner one they
    will be loose.
measuring-one = Every slot of this plan is drawn for one thickness: { $thickness }. On a thicker
    sheet the joints will not go in, on a thinner one they will be loose.
measuring-coupon = The caliper tells how thick the sheet is, and with that which files to take. The
    coupon tells the true cut: a cutter of { $cutter } may cut { $cut }, and then every slot is wider and every tab narrower than its line. Cut it from a corner of the
    very sheet, with the cutter and the settings you will cut the plan with, and with nothing
    corrected.
measuring-read = Each slot grows in steps, and so does each arm of the tab from its tip on. Count
    the slots’ steps by the notches in the edge beside them, from the corner that is cut off; every
    fifth is deeper. With a caliper measure the long slot, its length in x and its width in y, and
    the last step of either arm, beside its root. By hand find the first step of each slot that
    takes the tab’s tongue with a push, and the last step of each arm that goes into the long slot
    so.
measuring-typed = Type what you read into start-here.html, beside what the sheet measures: it
    reckons the true cut, and says what is the machine’s.
measuring-crossing = The notch in the tab is as deep as the plan’s deepest: push it over the plate’s
    edge to feel how a long joint goes. It goes as planned only where the sheet is as thick as drawn.
measuring-rule = By how much the slots are wider than drawn and the arms narrower, on the average,
    the cutter cuts too wide. Correct it once: tell your toolpath program that diameter, { $cut } for { $cutter }, and cut the files as they are.
measuring-built = Where nobody can tell it that, start-here.html makes files that have the true cut
    built in, and say so in name and note. Never do both.
measuring-without = Without a caliper, the step that takes the tongue with a push names a thickness
    in the table, and that what to take. It holds sheet and cutter together: slots will be right,
    but tabs come out narrower by what the cutter cuts too wide, and those that reach through too
    long or short.
measuring-lies = 0,0 of its file is the plate’s lower left corner; tape plate and tab down.
measuring-play = Tight in every step: measure the sheet again, or look for chips and a worn cutter.
    Loose in every step: the sheet is thinner than the coupon tries, or the cutter runs out of true.
measuring-arms = The arms’ steps are drawn { $steps } wide from the tip on, the long slot { $long }
    long.
