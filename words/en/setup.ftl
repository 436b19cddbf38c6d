# What setup sheets tell of the sheets of a layout.
setup-caution-worn = Eyes and ears protected, dust drawn off, no loose sleeves. Nothing loose on the
    table.
setup-caution-holding = Hold the sheet everywhere; no clamp or screw in the cutter’s way. Run the
    first lines above the sheet, a hand on the stop.
setup-caution-alone = Never leave the machine alone. Let the cutter stop before you reach in.
setup-defer = The maker’s settings on the maker’s machine, a place to begin and no rating. Your
    machine’s manual, the cutter maker’s limits, local codes and licensed practice come first.
setup-no-clamp = No edge has room: hold the sheet by vacuum, tape or screws in the waste.
setup-compare = Your toolpath program should find, along the drawn lines:
setup-no-settings = The plan states no cut settings for this sheet: choose your own, and try them.
setup-zero-centre = Middle of the sheet
setup-zero-corner = Lower left corner
setup-offset = offset { $offset }
setup-speed = { $rpm } rpm
setup-rates = { $rates } { $unit }
setup-feed = feed { $rate }
setup-plunge = plunge { $rate }
setup-passes-diameter = one cutter diameter a pass
setup-passes-one = one pass
setup-passes-to = passes to { $depths }
setup-passes-through = passes to { $depths }, then through
setup-side-on = on line
setup-side-inside = inside
setup-side-outside = outside
setup-passes = { $count ->
    [one] { $count } pass
   *[other] { $count } passes
 }
setup-bridges = { $count ->
    [one] { $count } bridge { $height } high
   *[other] { $count } bridges { $height } high
 }
setup-through = through
setup-depths-last = {" "}and{" "}
setup-left-engrave = Engravings of { $where }, { $depth }: { $why }
setup-left-pocket = Pockets of { $where }, { $depth }: { $why }
setup-left-opening = Openings of { $where }, { $depth }: { $why }
setup-left-outline = Outlines of { $where }, { $depth }: { $why }
setup-drill = { $count ->
    [one] Drill by hand: { $count } hole { $wide }, { $depth }, in { $where }
   *[other] Drill by hand: { $count } holes { $wide }, { $depth }, in { $where }
 }
setup-tape = Tape { $where } down, or leave a thin skin: no bridge can stand on it
setup-no-depth = no depth stated
setup-along-x = along x: { $spots } { $unit }
setup-along-y = along y: { $spots } { $unit }
setup-stretch = { $number } from { $least } to { $most }
