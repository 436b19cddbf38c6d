# Was ein Stück kostet, und mehrere.
costs-title = Kosten
costs-one = Ein { $copy }, in { $currency }
costs-several = Mehrere { $copies }, in { $currency }
costs-count = Anzahl
costs-what = Was
costs-sheets = Platten
costs-each = Einzeln
costs-together = Zusammen
costs-in-all = Alles zusammen
costs-own-prices = Die Preise sind die der Werkstatt; deine weichen ab.{ $unknown ->
    [0] {""}
    [one] {" "}Für { $unknown } Zeile der Liste ist kein Preis bekannt.
   *[other] {" "}Für { $unknown } Zeilen der Liste ist kein Preis bekannt.
 }
costs-machine-time = Maschinenzeit
