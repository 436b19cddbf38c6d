# Words of pages: yard.
pageyard-title = Yard card
pageyard-lead = What to ask for, and where to have it cut.
pageyard-ask = What to ask for
pageyard-price-one = Price of one { $field }
pageyard-price = { $one } × { $count } = { $sum } { $currency }
pageyard-together = Together { $sum } { $currency }
pageyard-sheets-of = { $together }, sheets of { $weight }
pageyard-saw = The yard’s saw
pageyard-blank = Blank
pageyard-size = Size, weight
pageyard-corner = Its corner
pageyard-head = { $plan }, yard card
pageyard-about = What to ask for at the yard for { $plan }, release { $release }.
