# What to ask for at the yard, and how its saw makes it small.
yardcard-title = At the yard
yardcard-ask = What to ask for
yardcard-count = Count
yardcard-weight = Weight
yardcard-together = The sheets weigh { $weight } together.
yardcard-small = Cut small at the yard, to fit a car
yardcard-blanks = Blanks of sheet { $number }
yardcard-blank = Blank
yardcard-size = Size, weight
yardcard-pieces = Pieces
yardcard-corner = Its corner
