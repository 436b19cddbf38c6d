# What the pictures of a plan are.
pictures-drawn = All pictures are drawings made from the plan.
pictures-photographed = The pictures of the build are photographs; all others are drawn from the
    plan.
pictures-cover = the cover
pictures-steps = { $count ->
    [one] step { $steps }
   *[other] steps { $steps }
 }
pictures-shown = { $count ->
    [one] { $places } is shown as a { $how }, not a photograph
   *[other] { $places } are shown as a { $how }, not a photograph
 }
pictures-photographs = { $count ->
    [one] { $places } is a photograph
   *[other] { $places } are photographs
 }
pictures-said = { $said }. Parts and sheets are drawn from the plan.
pictures-made = { $how }, not a photograph.
