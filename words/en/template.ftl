# Words on templates.
template-title = { $plan }: template of { $part }
template-shows = Full size, { $wide } by { $high }. Square inside corners, to be cut by hand.
template-saw = Saw in the shade, to the line.
template-drill = Drill ø { $drill } at the small circles, then saw in the shade, to the line.
template-show-face = show face
template-up = up
template-wide = { $size } wide
template-deep = { $depth } deep
template-bore = { $through ->
    [0] ø { $drill }
   *[other] ø { $drill } through
 }
template-edge-bore = ø { $drill } into the edge
template-bore-first = first ø { $drill }
template-bore-then = { $through ->
    [0] then ø { $drill }
   *[other] then ø { $drill } through
 }
