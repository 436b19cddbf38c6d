# Load and sag, span by span.
spans-title = Load and sag
spans-mind = Mind
spans-bounds = { $span }: sag, by how it is held
spans-held = Held
spans-first-day = First day
spans-after-years = After years
spans-rests = What these estimates rest on
spans-estimate = An estimate from stated values, no rating: try it with care before you trust it, and do not climb on what was not made for it.
spans-not-reckoned = Screws, bolts, glue and what they are fixed to are not reckoned; they may give way long before. Knots, moisture and rough use change the figures too.
spans-codes-first = Local codes and licensed practice come first.
spans-racking = What carries well downwards may still lean over sideways: a frame of two sides and a shelf needs a back, a rail deep enough or a brace that keeps its corners square.
spans-no-stiffness = no stiffness of it is known
