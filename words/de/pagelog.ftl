# Wörter der Seiten: log.
pagelog-title = Probeschnitte
pagelog-lead = Versuche und Arbeiten, wie sie im Logbuch stehen: die Einstellungen, mit denen gefräst wurde, und die Kante, die herauskam. Auch was misslang, steht hier.
pagelog-log = Das Logbuch
pagelog-caution = Einstellungen einer Maschine und einer Platte. Beginne auf deiner niedriger und halte dich an die Anleitungen von Maschine und Fräser.
pagelog-about = Versuche und Arbeiten bei { $house }: Einstellungen und Ergebnis.
pagelog-whole = Das ganze Logbuch
pagelog-whole-of = Das ganze Logbuch von { $house }
pagelog-whole-about = Alle Versuche, nur für die Werkstatt.
pagelog-whole-kicker = Privat
pagelog-whole-none = Noch steht nichts darin.
pagelog-whole-count = { $count ->
    [one] { $count } Versuch.
   *[other] { $count } Versuche, der neueste zuerst.
 }
pagelog-whole-all = Alle Versuche
pagelog-tallies = Platte und Fräser
pagelog-tallies-count = Versuche
pagelog-tallies-outcomes = Ergebnisse
