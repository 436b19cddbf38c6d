# Worte auf Schablonen.
template-title = { $plan }: Schablone von { $part }
template-shows = Volle Größe, { $wide } mal { $high }. Rechtwinklige Innenecken, von Hand zu schneiden.
template-saw = Im Schatten sägen, bis an die Linie.
template-drill = Bei den kleinen Kreisen ø { $drill } bohren, dann im Schatten sägen, bis an die Linie.
template-show-face = Sichtseite
template-up = oben
template-wide = { $size } breit
template-deep = { $depth } tief
template-bore = { $through ->
    [0] ø { $drill }
   *[other] ø { $drill } durch
 }
template-edge-bore = ø { $drill } in die Kante
template-bore-first = zuerst ø { $drill }
template-bore-then = { $through ->
    [0] dann ø { $drill }
   *[other] dann ø { $drill } durch
 }
