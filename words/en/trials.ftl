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
trials-as-cut = As cut
trials-as-cut-with = Sheet and cutter
trials-as-cut-set = Settings
trials-as-cut-out = How it came out
trials-as-cut-feed = Feed { $value }
trials-as-cut-plunge = Plunge { $value }
trials-as-cut-passes = Passes { $value }
trials-as-cut-direction = Direction: { $value }
trials-counted = { $count } × { $grade }
trials-gone-sheet = Cut from { $sheet }; the plan is no longer cut from that.
trials-gone-thick = { $now ->
    [one] Cut from { $thick }; the plan is now for { $least }.
   *[range] Cut from { $thick }; the plan is now for { $least } to { $most }.
 }
trials-gone-release = Cut from release { $release }, which the plan no longer lists.
trials-gone-otherwise = Cut from an older release; release { $release } cuts this otherwise.
trials-gone-since = Cut from an older release; since then came { $releases }, and no record tells whether they cut this
    otherwise.
trials-grade-says = { $grade ->
    [clean] Nothing to do: it goes to the finish as it was cut.
    [nearly-clean] A stroke or two of fine paper and it is gone.
    [to-sand] Wants sanding all along before the finish.
    [to-mend] Chips, tears or burns to fill, to cut back or to hide.
   *[spoiled] The piece has to be cut again.
 }
trials-feel-says = { $feel ->
    [rattles] It falls together and shakes.
    [by-hand] It goes together by hand and stays.
    [by-palm] It wants a push of the palm.
    [by-mallet] It wants a mallet.
   *[stuck] It does not go together.
 }
