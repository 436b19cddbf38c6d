# Wörter der Seiten: yard.
pageyard-title = Zuschnittzettel
pageyard-lead = Wonach du fragst, und wo du es schneiden lässt.
pageyard-ask = Wonach du fragst
pageyard-price-one = Preis für eine { $field }
pageyard-price = { $one } × { $count } = { $sum } { $currency }
pageyard-together = Zusammen { $sum } { $currency }
pageyard-sheets-of = { $together }, Platten von { $weight }
pageyard-saw = Die Säge im Holzhandel
pageyard-blank = Zuschnitt
pageyard-size = Größe, Gewicht
pageyard-corner = Seine Ecke
pageyard-head = { $plan }, Zuschnittzettel
pageyard-about = Wonach du im Holzhandel für { $plan }, Ausgabe { $release }, fragst.
