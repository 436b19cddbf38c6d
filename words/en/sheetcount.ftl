# How many sheets it takes, and how far that can be trusted.
sheetcount-proven = { $sheets ->
    [one] { $sheets } sheet: proven the fewest
   *[other] { $sheets } sheets: proven the fewest
 }
sheetcount-bound = { $sheets ->
    [one] { $sheets } sheet: nobody can do with fewer than { $bound }
   *[other] { $sheets } sheets: nobody can do with fewer than { $bound }
 }
