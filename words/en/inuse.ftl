# A thing in use: what it is good for, its figures, and what they rest on.
inuse-heading = Estimates, no ratings
inuse-caution-estimates = Estimates from stated values for a stiff, sound thing on a hard, level
    floor; no rating. Try it with care before you trust it.
inuse-caution-more = Who jumps, rocks, climbs or stands on it asks more than is reckoned here.
inuse-caution-codes = Local codes and licensed practice come first.
inuse-on = { $thing } on { $others }
inuse-alone = { $thing }, by itself
inuse-doing-sit-in-the-middle = sitting
inuse-doing-stand-things-on = carrying
inuse-doing-store-things = storing
inuse-doing-lean-on = leaning on
inuse-doing-plane-along = planing
inuse-for = for { $uses }
inuse-not-for = not for { $uses }: { $why }
inuse-sags-sat = { $panel } with a person in its middle sags
inuse-sags = { $span } sags
inuse-no-span = no span of the { $part } is stated
inuse-not-known = not known
inuse-with = with { $load }
inuse-first-day = { $sag } on the first day
inuse-after-years = { $sag } after years
inuse-no-creep = after years: not known, no creep is stated
inuse-edge = A load on its edge tips it
inuse-edge-nowhere = nowhere: it stays over { $on ->
    [others] what it lies on
   *[feet] the feet
 }
inuse-nearest = nearest { $towards }, { $inside } inside
inuse-edge-from = A load on its edge tips it{ $on ->
    [others] {" "}off
   *[feet] {""}
 }, from
inuse-load-towards = { $load } { $towards }
inuse-reaches = there it reaches { $beyond } beyond { $on ->
    [others] what it lies on
   *[feet] the feet
 }
inuse-may-be-near = { $who ->
    [person] a person of { $mass } may be no nearer than { $near } to that edge
   *[load] a load of { $mass } may be no nearer than { $near } to that edge
 }
inuse-may-be-anywhere = { $who ->
    [person] a person of { $mass } may be anywhere
   *[load] a load of { $mass } may be anywhere
 }
inuse-edge-sat = With a person on that edge it tips
inuse-tips-itself = by itself, { $towards }
inuse-tips-tilted = when tilted by { $angle }, { $towards }
inuse-person-of = a person of { $mass }
inuse-pushed = Pushed { $way }, empty, it
inuse-pushed-up = pushed { $height } up
inuse-pushed-loaded = with the person on it, it { $moves }
inuse-first-slides = slides{ $on ->
    [others] {" "}on what it lies on
   *[floor] {""}
 } at { $slide }, before it tips at { $tip }
inuse-first-tips = tips at { $tip }, before it slides{ $on ->
    [others] {" "}on what it lies on
   *[floor] {""}
 } at { $slide }
inuse-leans = It leans { $way }
inuse-tabs-there = { $tabs ->
    [0] no tab there; { $kept }
    [one] { $tabs } tab there; { $kept }
   *[other] { $tabs } tabs there; { $kept }
 }
inuse-joints-alone = nothing but its joints resists pushing
inuse-stiff-panel = a panel stiffens it: { $by }
inuse-stiff-brace = a brace stiffens it: { $by }
inuse-stiff-bolted-shoulder = a bolted shoulder stiffens it: { $by }
inuse-lean-upto = up to { $most } at the top, by the play of its joints
inuse-lean-none = not at all: what stands along the push, or a bolt, leaves no play
inuse-lean-unknown = not known: no tab holds it this way
inuse-rest-person = Person
inuse-rest-push = Push of a person who leans or planes
inuse-rest-friction = Friction between feet and floor
inuse-rest-stands = It stands
inuse-stands-free = free on the floor
inuse-stands-fixed = free on the floor, as before it is fixed to the wall
inuse-rest-carrying = Panel that carries
inuse-carrying-panel = { $panel }, the highest broad one to lie flat
inuse-carrying-none = none lies flat: what of it is highest
inuse-rest-tipping = Tipping
inuse-tipping-is = over the hull of what touches the floor; a load at the panel’s edge
    when load × reach beyond the feet is more than own weight × distance of its middle from their
    edge
inuse-rest-pushing = Pushing
inuse-pushing-is = level, at the height of the panel, the worse of both directions
inuse-rest-lean = Lean
inuse-lean-is = each tab turns in its slot by twice the fit over its depth
inuse-rest-stiffening = Stiffening
inuse-stiffening-is = a panel half as high as the uprights, a shoulder drawn up by bolts, or braces
    together a quarter as high
inuse-rest-held = It is held on what bears it
inuse-held-by = { $held ->
    [clamped] by clamps: all move as one body
    [screwed] by screws: all move as one body
   *[brackets] by brackets: all move as one body
 }
inuse-rest-loose = It lies loose on what bears it
inuse-loose-is = its own weight alone keeps it there: it tips off over the hull of their tops
inuse-rest-loose-pushed = A push on what lies loose
inuse-loose-pushed-is = reaches its supports by friction; each takes an even share of the load and
    tips about its own foot
inuse-source-en1022 = stated in the plan, else the scope of EN 1022:2018
inuse-source-stated = stated in the plan, else common practice, no single source
inuse-source-friction = stated in the plan, else 0.3, wood on a hard floor; from memory
inuse-source-simplified = simplification
inuse-source-together = the plan put together
inuse-source-statics = statics of a rigid body
inuse-source-angles = geometry of small angles; give of the wood not reckoned
inuse-source-practice = common practice, no single source
inuse-title = In use
inuse-rests = What these estimates rest on
