# Für welche anderen Platten und Tische ein Plan ausgelegt ist.
othersheets-size = Platten von { $size }
othersheets-bed = Ein Tisch von { $size }
othersheets-sheets = { $count ->
    [one] { $count } Platte { $sheet }
   *[other] { $count } Platten { $sheet }
 }
othersheets-blanks = { $count ->
    [one] { $count } Zuschnitt { $sheet }
   *[other] { $count } Zuschnitte { $sheet }
 }
