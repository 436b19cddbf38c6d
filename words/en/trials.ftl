# What the maker tried on the way.
trials-title = Test cuts
trials-mind = What the maker tried on the way. Settings of one machine and one sheet: start lower on
    yours.
trials-set-sheet = Sheet
trials-set-measured = Measured
trials-set-cutter = Cutter
trials-set-speed = Speed
trials-set-feed = Feed
trials-set-plunge = Plunge
trials-set-passes = Passes
trials-set-fit = Fit a side
trials-rpm = { $speed } rpm
trials-graded = { $grade }: { $marks }
trials-grade = { $grade ->
    [clean] Clean
    [nearly-clean] Nearly clean
    [to-sand] To sand
    [to-mend] To mend
   *[spoiled] Spoiled
 }
trials-mark = { $mark ->
    [fuzz] fuzz
    [burn] burn marks
    [chatter] chatter
    [tear-out] tear-out
   *[noise] noise
 }
