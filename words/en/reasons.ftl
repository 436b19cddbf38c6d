# Why a size of what takes a sheet is what it is.
reasons-taking = { $thickness } sheet + 2 x { $fit }
reasons-around = { $tab } tab + 2 x { $fit }
reasons-fit = { $fit } fit
reasons-fit-knock-down = { $fit } knock-down fit
reasons-fit-glued = { $fit } glued fit
reasons-fit-press = { $fit } press fit
reasons-fit-drop-in = { $fit } drop-in fit
reasons-film = film
reasons-sanding = sanding
reasons-damp = damp
reasons-needs = { $sides ->
    [1] { $reason } { $sign } { $size } for { $why }
   *[other] { $reason } { $sign } { $sides } x { $size } for { $why }
 }
reasons-stated = stated: { $amount }
reasons-as-drawn = as drawn
reasons-end-to-end = { $size } from end to end
reasons-both-ends = { $size } + 2 x { $fit }
reasons-deepened = { $depth } deep + { $fit }
reasons-through = through the { $thickness } sheet
reasons-finger = { $finger } finger + { $fit }
reasons-mid-thickness = half way through the sheet
