# Was die Bilder eines Plans sind.
pictures-drawn = Alle Bilder sind Zeichnungen nach dem Plan.
pictures-photographed = Die Bilder vom Bau sind Fotos; alle anderen sind nach dem Plan gezeichnet.
pictures-cover = das Titelbild
pictures-steps = { $count ->
    [one] Schritt { $steps }
   *[other] die Schritte { $steps }
 }
pictures-shown = { $count ->
    [one] { $places } ist so gezeigt: { $how }, kein Foto
   *[other] { $places } sind so gezeigt: { $how }, kein Foto
 }
pictures-photographs = { $count ->
    [one] { $places } ist ein Foto
   *[other] { $places } sind Fotos
 }
pictures-said = { $said }. Teile und Platten sind nach dem Plan gezeichnet.
pictures-made = { $how }, kein Foto.
