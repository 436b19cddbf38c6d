# Words of pages: log.
pagelog-title = Test cuts
pagelog-lead = Tests and jobs as they were logged: the settings that went in, the edge that came out. What failed is here too.
pagelog-log = The log
pagelog-caution = Settings of one machine and one sheet. Start lower on yours, and keep to the manuals of your machine and cutter.
pagelog-about = Tests and jobs logged at { $house }: settings in, outcome out.
pagelog-whole = The whole log
pagelog-whole-of = The whole log of { $house }
pagelog-whole-about = All trials, for the maker alone.
pagelog-whole-kicker = Private
pagelog-whole-none = Nothing is logged yet.
pagelog-whole-count = { $count ->
    [one] { $count } trial.
   *[other] { $count } trials, the newest first.
 }
pagelog-whole-all = All trials
pagelog-tallies = Sheet and cutter
pagelog-tallies-count = Trials
pagelog-tallies-outcomes = Outcomes
