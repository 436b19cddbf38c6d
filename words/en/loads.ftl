# What a plan's spans carry.
loads-heading = Estimates, no ratings
loads-no-figure = No figure: { $why }.
loads-lifts = It only lies there, and this load on what hangs out lifts its far end: it tips off.
loads-overloaded = More is asked here than this estimate allows.
loads-own-sag = Its own weight alone sags { $sag }, beyond the limit of { $limit }.
loads-own-strength = Its own weight alone brings it to its strength over the safety factor.
loads-suits = The sag alone would suit a limit of span/{ $share }.
loads-tabs-first = Without glue the tabs of the { $part } give way first.
loads-by-metre = { $unit ->
    [in] { $foot } a foot ({ $metre } a metre)
   *[mm] { $metre } a metre ({ $foot } a foot)
 }, in all { $whole }
loads-placed-even = { $load } spread evenly on the { $carrier }
loads-placed-middle = { $load } in the middle of the { $carrier }
loads-placed-end = { $load } at the end of the { $carrier }
loads-reach-shelf = { $length } from support to support
loads-reach-rail = { $length } from support to support
loads-reach-overhang = hanging out { $length }
loads-reach-leg = { $length } long
loads-asked-alone = { $load }.
loads-asked-leg = { $load } straight down on the { $carrier }, { $reach }.
loads-asked-stays = { $load }, { $reach }; the load stays.
loads-asked-goes = { $load }, { $reach }; the load comes and goes.
loads-under-edge = On edge under it: { $count } × { $part }, { $joined ->
    [glued] glued to it
   *[loose] not glued to it
 }.
loads-under-flat = Flat under it: { $count } × { $part }, { $joined ->
    [glued] glued to it
   *[loose] not glued to it
 }.
loads-first-day = Sag on the first day
loads-after-years = Sag after years
loads-limit = Limit
loads-lifting = Its far end lifts with, at the end
loads-lifting-even = { $load } spread over the overhang of { $reach }
loads-lifting-why = it only lies there, held by its own weight alone; no limit of sag changes that
loads-no-lift = It does not lift
loads-held = { $held ->
    [clamped] held down by clamps
    [screwed] held down by screws
   *[brackets] held down by brackets
 }
loads-held-bears = { $held ->
    [clamped] the clamps bear what would lift it; how much they bear is not reckoned
    [screwed] the screws bear what would lift it; how much they bear is not reckoned
   *[brackets] the brackets bear what would lift it; how much they bear is not reckoned
 }
loads-not-known = not known
loads-no-creep = no creep is stated
loads-were-clamped = { $sag } were it clamped
loads-were-clamped-glued = { $sag } were it clamped and glued
loads-by-sag = sag at its limit: { $load }
loads-by-lifting = lifting off: { $load }
loads-strength-unknown = strength: not known
loads-by-strength = strength over a safety factor of { $factor }: { $load }, { $where }
loads-spot-middle = in the middle of the { $part }
loads-spot-support = in the { $part }, at a support
loads-spot-away = in the { $part }, { $away } from a support
loads-tabs = { $tabs ->
    [one] { $tabs } tab of the { $part } at an end
   *[other] { $tabs } tabs of the { $part } at an end
 }
loads-tabs-unknown = { $tabs }: strength not known
loads-tabs-shear = { $tabs }, without glue (shear): { $load }
loads-tabs-pressure = { $tabs }, without glue (pressure): { $load }
loads-each-over = each over a safety factor of { $factor }
loads-least = the least of them
loads-swaying = Buckles, swaying, at
loads-swaying-why = its upper end is free, as in a frame without a brace
loads-held-ends = Buckles, held, at
loads-held-ends-why = neither end can move sideways
loads-crushed = Is crushed at
loads-greatest = Greatest load, estimated
loads-ends-free = Ends free to turn{ $joined ->
    [loose] , not glued
    [glued] , glued
    [stated] , glued where the plan says so
   *[none] {""}
 }
loads-ends-clamped = Ends clamped{ $joined ->
    [loose] , not glued
    [glued] , glued
    [stated] , glued where the plan says so
   *[none] {""}
 }
loads-ends-one = Clamped at one end{ $joined ->
    [loose] , not glued
    [glued] , glued
    [stated] , glued where the plan says so
   *[none] {""}
 }
