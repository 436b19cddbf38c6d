# What the log says of a sheet and a cutter: best settings, what failed near, what to try.
logbest-on = { $cutter } on { $sheet }
logbest-operation = { $operation ->
    [through] Cut through
    [part-way] Cut part way
    [letters] Letters
   *[holes] Holes
 }
logbest-chip = Chip load
logbest-first = First pass
logbest-rest = Then
logbest-direction = Direction
logbest-way = { $climb ->
    [yes] climb, with the feed
   *[no] conventional, against the feed
 }
logbest-count = { $count } × { $grade }
logbest-known = { $well } of { $total } cuts with settings alike came out well. Of all such cuts, { $low } to
    { $high } in a hundred will.
logbest-promising = Not known yet. { $well } of { $total } { $total ->
    [one] cut
   *[other] cuts
 } with settings alike came out well; { $needed ->
    [one] { $needed } more that does
   *[other] { $needed } more that do, one after the other,
 } would make them known.
logbest-poor = Nothing good is known yet. Of { $total } { $total ->
    [one] cut
   *[other] cuts
 } with the best settings so far, { $well ->
    [0] none
   *[other] { $well }
 } came out well.
logbest-nothing = Not known: no cut is logged here that has a verdict, a feed and a speed.
logbest-left-out = { $count ->
    [one] { $count } entry is not compared: it lacks a verdict, a feed or a speed.
   *[other] { $count } entries are not compared: they lack a verdict, a feed or a speed.
 }
logbest-newest = Newest of them
logbest-well = Well is clean or nearly clean. Alike are chip loads within a quarter of each other, speeds within
    half, first passes within a quarter of the cutter’s diameter and on the same side of an up-cut tip, later ones
    within half of it; the plunge is not compared.
logbest-failure = { $settings }: { $seen }
logbest-towards = { $axis ->
    [thicker] A thicker chip, { $chip }
    [thinner] A thinner chip, { $chip }
    [deeper] A deeper first pass, { $first }
    [shallower] A shallower first pass, { $first }
    [deeper-then] Deeper passes after the first, { $then }
    [shallower-then] Shallower passes after the first, { $then }
    [faster] The same chip at a higher speed, { $speed }
    [slower] The same chip at a lower speed, { $speed }
   *[turned] The other direction
 }
logbest-tip-rule = First pass deeper than the up-cut tip of { $tip }: within it the tip lifts the face.
logbest-tip-seen = { $within-all ->
    [0] Deeper, { $deeper } of { $deeper-all } came out well; none is logged within it.
   *[other] { $deeper-all ->
        [0] Within it, { $within } of { $within-all } came out well; none deeper is logged.
       *[other] Deeper, { $deeper } of { $deeper-all } came out well; within it, { $within } of { $within-all }.
     }
 }
logbest-diameter-rule = No deeper than one cutter diameter, { $diameter }, with the whole chip load, until a trial
    says more.
logbest-cure = { $axis ->
    [thicker] a thicker chip
    [thinner] a thinner chip
    [deeper] a deeper first pass
    [shallower] a shallower first pass
    [deeper-then] deeper passes after the first
    [shallower-then] shallower passes after the first
    [faster] a higher speed
    [slower] a lower speed
   *[turned] the other direction
 }
logbest-next = { $why ->
    [begin] Begin in the published range: what lies near was not tried.
    [elsewhere] Begin with what is best on a sheet alike.
    [repeat] { $times ->
        [one] Cut once more with the same settings: if it comes out well, they are known.
       *[other] Cut { $times } times more with the same settings: if all come out well, they are known.
     }
    [rival] { $times ->
        [one] Cut once more with these, which came out clean: once more, and they are known to be better.
       *[other] Cut { $times } times more with these, which came out clean too seldom to be known to be better.
     }
    [tip] Try a first pass deeper than the up-cut tip: within it the tip lifts the face.
    [mark] Against { $mark }, try { $cure }.
    [between] Half way to { $cure } that failed: it tells where it begins to fail.
    [further] Nobody has been there: try { $cure }.
    [turned] Only one direction was tried: try the other.
    [enough] Nothing near would tell more. Log jobs, so that a change is seen.
    [other] All that lies near was tried and did not come out well: try another cutter.
   *[no-table] No chip load is published for this sheet and cutter. Log a cut with its feed, speed and passes to
        begin.
 }
logbest-elsewhere = On a sheet alike, { $sheet }: { $well } of { $total } came out well with { $settings }.
logbest-head-best = Best known settings
logbest-head-so-far = Best so far
logbest-head-failed = What failed near them
logbest-head-next = The next trial
logbest-head-tip = First pass
logbest-head-elsewhere = On sheets alike
logbest-head-behind = What stands behind them
logbest-none-failed = Nothing near them failed yet: nobody knows how far they may be pushed.
logbest-answers = What it answers
logbest-chart-chip = Edge over chip load
logbest-chart-first = Edge over first pass
logbest-chart-fit = Fit over clearance
logbest-chart-thick = Thickness by batch
logbest-chart-all = Cuts, the newest first
logbest-chart-drawn = { $shown } of { $count }, the newest.
logbest-dots = { $dots ->
    [grades] A dot is a cut: a disc clean, a ring nearly clean, a triangle to sand, a cross to mend, a square spoiled.
   *[other] A dot is one reading.
 }
logbest-zone = Shaded is what is alike to the best.
logbest-scale-chip = { $unit } for each edge
logbest-scale-first = { $unit } deep
logbest-scale-fit = { $unit } a side
logbest-scale-thick = { $unit }
logbest-line-tip = tip
logbest-went = { $feel ->
    [rattles] Rattles
    [by-hand] By hand
    [by-palm] By palm
    [by-mallet] By mallet
   *[stuck] Stuck
 }
logbest-col-day = Day
logbest-col-grade = Outcome
logbest-col-fit = Clearance a side
logbest-col-went = Went together
logbest-col-batch = Batch
logbest-col-readings = Readings
logbest-col-moisture = Moisture
logbest-fits = Fits tried
logbest-batches = Sheets measured
logbest-described = { $count } cuts; { $counts }.
logbest-card = settings card
logbest-card-title = Settings for { $sheet }
