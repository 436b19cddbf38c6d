# The facts that decide whether one builds it.
deciding-head-size = Size
deciding-head-material = Material
deciding-head-thickness = Sheet thickness
deciding-head-cost = Cost
deciding-head-time = Time
deciding-head-difficulty = How hard
deciding-head-hands = Hands
deciding-head-tools = Tools
deciding-head-bed = Router’s bed
deciding-sides = width × depth × height
deciding-mass-all = { $mass } with boards and hardware
deciding-mass-boards = { $mass } with boards
deciding-mass-hardware = { $mass } with hardware
deciding-mass-without = about { $mass }, without { $items }
deciding-size-enough = { $size }; { $enough }
deciding-enough = a piece of { $size } is enough
deciding-one-enough = of one of them a piece of { $size } is enough
deciding-drawn = drawn at { $thickness }
deciding-sets = { $sets ->
    [one] { $sets } set of files is ready-made
   *[other] { $sets } sets of files are ready-made
 }
deciding-long = { $length } long
deciding-no-prices = no prices known
deciding-from = from { $total }
deciding-unpriced = { $unknown ->
    [one] no price is known for { $unknown } line of the list
   *[other] no price is known for { $unknown } lines of the list
 }
deciding-all-priced = all of it
deciding-cutting = about { $time } to cut
deciding-building = about { $time } to put together
deciding-alone = One person
deciding-alone-for = for sheets and steps alike
deciding-helped = One person, helped at times
deciding-lift-step = { $people ->
    [2] two for what is moved in step { $step }, { $mass }
   *[other] more than two for what is moved in step { $step }, { $mass }
 }
deciding-lift-sheet = { $people ->
    [2] two for the whole sheet, { $mass }
   *[other] more than two for the whole sheet, { $mass }
 }
deciding-tools = { $count ->
    [one] { $count } tool
   *[other] { $count } tools
 }
deciding-tools-under = listed under { $need }
deciding-bed-alone = for piece after piece
deciding-bed-laid = sheets as they are laid out want { $size }
deciding-bed-off = Too large for a bed of { $bed }
