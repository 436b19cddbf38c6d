# Wie viele Platten es braucht und wie weit dem zu trauen ist.
sheetcount-proven = { $sheets ->
    [one] { $sheets } Platte: bewiesen die wenigsten
   *[other] { $sheets } Platten: bewiesen die wenigsten
 }
sheetcount-bound = { $sheets ->
    [one] { $sheets } Platte: Niemand kommt mit weniger als { $bound } aus
   *[other] { $sheets } Platten: Niemand kommt mit weniger als { $bound } aus
 }
