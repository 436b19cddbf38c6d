# Eine Passprobe auf der Maschine.
setupcoupon-title = Passprobe, { $sheet }
setupcoupon-plate = Brettchen
setupcoupon-tab = Zapfen
setupcoupon-scrap-plain = Nimm ein Reststück von { $size } eben der Platte, die du schneiden wirst,
    die Sichtseite nach oben.
setupcoupon-scrap-grained = Nimm ein Reststück von { $size }, die Faserrichtung längs x, eben der
    Platte, die du schneiden wirst, die Sichtseite nach oben.
setupcoupon-tape = Kleb es vollflächig nieder, unter Brettchen und Zapfen: Nichts anderes hält die
    kleinen Stücke.
setupcoupon-cutter = Spann den Fräser ein, mit dem du den Plan schneiden wirst, und gib den
    Durchmesser ein, der auf ihm steht: Korrigiere noch nichts.
setupcoupon-zero = Setz x und y null, wo die linke untere Ecke des Brettchens liegen soll, z auf
    dem Tisch unter dem Reststück.
setupcoupon-cut = Schneide sie, löse beide Stücke heraus, bürste Grate ab und lies sie, wie es unter
    „Schneide das zuerst“ steht.
