# What to compare with a toolpath program.
pathwords-layer = { $layer }: { $found }
pathwords-contours = { $count ->
    [one] { $count } contour
   *[other] { $count } contours
 }
