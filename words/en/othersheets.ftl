# For which other sheets and beds a plan is laid out.
othersheets-size = Sheets of { $size }
othersheets-bed = A bed of { $size }
othersheets-sheets = { $count ->
    [one] { $count } sheet of { $sheet }
   *[other] { $count } sheets of { $sheet }
 }
othersheets-blanks = { $count ->
    [one] { $count } blank of { $sheet }
   *[other] { $count } blanks of { $sheet }
 }
