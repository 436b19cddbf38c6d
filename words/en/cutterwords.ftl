# Which cutter the files are drawn for, and which others pass.
cutterwords-wide = { $cutter }, { $wide } wide
cutterwords-drawn = The cut files are drawn for { $cutters }.
cutterwords-opened = Inside corners are opened a little wider than it, since many toolpath programs
    drop arcs of exactly the cutter’s radius; a smaller cutter works too, a larger one leaves the
    corners too full.
cutterwords-square = Some inside corners are drawn square: what the cutter leaves is cut by hand.
cutterwords-tightest = The tightest inside curve has a radius of { $radius }: no cutter wider than
    { $most } follows it.
