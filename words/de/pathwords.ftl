# Was du mit deinem Fräsprogramm vergleichst.
pathwords-layer = { $layer }: { $found }
pathwords-contours = { $count ->
    [one] { $count } Kontur
   *[other] { $count } Konturen
 }
