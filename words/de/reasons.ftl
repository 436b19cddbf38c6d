# Warum ein Maß von etwas, das eine Platte aufnimmt, so ist, wie es ist.
reasons-taking = { $thickness } Platte + 2 x { $fit }
reasons-around = { $tab } Zapfen + 2 x { $fit }
reasons-fit = { $fit } Passung
reasons-fit-knock-down = { $fit } Passung (zerlegbar)
reasons-fit-glued = { $fit } Passung (geleimt)
reasons-fit-press = { $fit } Passung (eingepresst)
reasons-fit-drop-in = { $fit } Passung (eingelegt)
reasons-film = Lack
reasons-sanding = Schleifen
reasons-damp = Feuchte
reasons-needs = { $sides ->
    [1] { $reason } { $sign } { $size } für { $why }
   *[other] { $reason } { $sign } { $sides } x { $size } für { $why }
 }
reasons-stated = angegeben: { $amount }
reasons-as-drawn = wie gezeichnet
reasons-end-to-end = { $size } von Ende zu Ende
reasons-both-ends = { $size } + 2 x { $fit }
reasons-deepened = { $depth } tief + { $fit }
reasons-through = durch die { $thickness } Platte
reasons-finger = { $finger } Zinke + { $fit }
reasons-mid-thickness = auf halber Dicke der Platte
