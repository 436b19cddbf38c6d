# Zahlen mit Wörtern: Spannen, Grenzen, Zeiten.
figures-to = { $least } bis { $most }
figures-about = etwa { $figure }
figures-under = unter { $figure }
figures-drill-over = { $drill }, { $over } darüber
figures-metres = Meter
figures-feet = Fuß
figures-minutes = { $minutes ->
    [one] { $minutes } Minute
   *[other] { $minutes } Minuten
 }
figures-minutes-short = { $minutes ->
    [0] unter 1 min
   *[other] { $minutes } min
 }
figures-hours = { $minutes ->
    [0] { $hours } h
   *[other] { $hours } h { $minutes } min
 }
figures-bytes = { $bytes ->
    [one] { $bytes } Byte
   *[other] { $bytes } Byte
 }
