# How long a plan's sheets take to cut.
cutting-machine = on a small-shop router
cutting-wear = { $ways } are counted over all passes. Depth, glue and grit dull a cutter too:
    compare like with like.
cutting-setting-through = { $sheet }, through
cutting-setting-deep = { $sheet }, to a depth
cutting-sheets = { $sheets ->
    [one] { $sheets } sheet
   *[other] { $sheets } sheets
 }
cutting-some-sheets = { $sheets ->
    [one] { $known } of { $sheets } sheet
   *[other] { $known } of { $sheets } sheets
 }
cutting-remark = Reckoned for a small-shop router with the maker’s settings; { $ways } are those of
    all passes. Loading, fixing and turning the sheet and sweeping are not in it.
cutting-left = Not in it either: { $uncut }.
cutting-uncut = { $operation ->
    [engrave] engravings of the { $part } ({ $why })
    [pocket] recesses of the { $part } ({ $why })
    [hole] holes of the { $part } ({ $why })
    [opening] openings of the { $part } ({ $why })
   *[outline] outlines of the { $part } ({ $why })
 }
cutting-title = Cutting time
cutting-rests = What the time rests on
cutting-by-sheet = Cutting time, sheet by sheet
cutting-sheet = Sheet
cutting-time = Time
cutting-unknown = no cut settings are stated for it
cutting-in-all = In all
cutting-in-some = In all, { $known }
cutting-by-cutter = What each cutter does in the wood
cutting-cutter = Cutter
cutting-cuts = Cuts
cutting-besides = Moves above the sheet and changes of cutter
cutting-too-narrow = too narrow for the cutters stated
cutting-no-setting = no setting stated for it
