# What another material changes.
swap-remark = Reckoned for what each sheet measures on average, its joints proved for all that it is
    sold at. Estimates, no ratings; cut settings are those of the plan’s own material.
swap-refused = { $count ->
    [one] Refused: { $count } thing no longer holds.
   *[other] Refused: { $count } things no longer hold.
 }
swap-minded = { $count ->
    [one] It goes together; { $count } thing to mind.
   *[other] It goes together; { $count } things to mind.
 }
swap-holds = It goes together, and nothing is remarked on that was not before.
swap-of-sheet = { $what }, { $sheet }
swap-thickness = Thickness
swap-range = { $drawn }, for { $range }
swap-weight = Weight
swap-sheets = Sheets
swap-price = Price of the sheets
swap-edges = Cut edges
swap-damp = Damp
swap-in-english = { $message }
swap-unknown = not known
swap-no-figure = no figure in the stock
swap-unreckoned = not known: { $why }
swap-bears = bears { $bears }, asked { $asked }
swap-sags = sags { $sag }, limit { $limit }; bears { $bears }, asked { $asked }
swap-pull-face = { $screw }, pull in the face of the { $part }
swap-pull-edge = { $screw }, pull in an edge of the { $part }
