# Figures with words: ranges, bounds, times.
figures-to = { $least } to { $most }
figures-about = about { $figure }
figures-under = under { $figure }
figures-drill-over = { $drill }, { $over } over
figures-metres = metres
figures-feet = feet
figures-minutes = { $minutes ->
    [one] { $minutes } minute
   *[other] { $minutes } minutes
 }
figures-minutes-short = { $minutes ->
    [0] under 1 min
   *[other] { $minutes } min
 }
figures-hours = { $minutes ->
    [0] { $hours } h
   *[other] { $hours } h { $minutes } min
 }
figures-bytes = { $bytes ->
    [one] { $bytes } byte
   *[other] { $bytes } bytes
 }
