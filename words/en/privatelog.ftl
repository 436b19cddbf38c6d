# The private page of the log: what the site shows of no entry.
privatelog-release = Release
privatelog-part = Part
privatelog-sheet = Sheet
privatelog-thickness = Thickness
privatelog-fit = Fit a side
privatelog-outcome = How it came out
privatelog-batch = Batch
privatelog-readings = Readings
privatelog-moisture = Moisture
privatelog-operation = What was cut
privatelog-direction = Direction
privatelog-workholding = Held by
privatelog-extraction = Extraction
privatelog-went = The joint went
privatelog-true-cut = True cut
privatelog-top = Upper edge
privatelog-bottom = Lower edge
privatelog-show-side = Face
privatelog-metres = Way of the cutter
privatelog-reckoned-minutes = Minutes reckoned
privatelog-minutes = Minutes
privatelog-hours = Hours of work
privatelog-money = Money
privatelog-finishes = Finishes
privatelog-glues = Glues
privatelog-mistakes = Mistakes
privatelog-repairs = Repairs
privatelog-word = { $word ->
    [through] through
    [part-way] part way
    [letters] letters
    [holes] holes
    [climb] climb
    [conventional] conventional
    [rattles] it rattles
    [by-hand] by hand
    [by-palm] by the palm
    [by-mallet] by the mallet
   *[stuck] it stuck
 }
privatelog-cutters = Cutters
privatelog-sent = What readers measured
privatelog-shown = On the site
