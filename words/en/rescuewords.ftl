# What saves a piece.
rescuewords-laid = Lay the piece as the file shows it, show face up, its lower edge along a fence
    and its left edge at a stop: their corner is 0,0. Zero z as for the first cut, and try it above
    the piece.
rescuewords-glued = Glue each to one wall of its opening, or to what goes in there, let it dry and
    trim it flush.
rescuewords-offcut = `{ $part }` lies as drawn, in the lower left of the offcut.
rescuewords-offcut-turned = `{ $part }` lies turned by { $turn } degrees, in the lower left of the
    offcut.
rescuewords-slips = Slips of about { $about }: { $layers }, as each usually is thick.
rescuewords-slip = { $name }: { $count } of { $size }
rescuewords-layers = { $count ->
    [one] { $count } layer of { $slip } ({ $thickness })
   *[other] { $count } layers of { $slip } ({ $thickness })
 }
rescuewords-slip-veneer = veneer
rescuewords-slip-card = card
rescuewords-slip-paper = paper
rescuewords-offcut-for = offcut for { $mark }, { $part }
