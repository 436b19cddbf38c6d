# Load and sag, span by span.
spans-title = Load and sag
spans-mind = Mind
spans-bounds = { $span }: sag, by how it is held
spans-held = Held
spans-first-day = First day
spans-after-years = After years
spans-rests = What these estimates rest on
