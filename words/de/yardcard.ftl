# Was im Holzhandel zu verlangen ist und wie dessen Säge es klein macht.
yardcard-title = Im Holzhandel
yardcard-ask = Was zu verlangen ist
yardcard-count = Anzahl
yardcard-weight = Gewicht
yardcard-together = Die Platten wiegen zusammen { $weight }.
yardcard-small = Klein gesägt im Holzhandel, damit es ins Auto passt
yardcard-blanks = Zuschnitte von Platte { $number }
yardcard-blank = Zuschnitt
yardcard-size = Größe, Gewicht
yardcard-pieces = Stücke
yardcard-corner = Seine Ecke
