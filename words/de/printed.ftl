# Was gedruckte Blätter gemeinsam haben; Legepläne, Einrichtblätter.
printed-title-setup = { $plan }: Einrichtblätter
printed-title-coupon = { $plan }: Einrichten der Passprobe
printed-title-layout = { $plan }: Legeplan
printed-title-saw = { $plan }: Sägepläne
printed-title-art = { $plan }: Gravuren
printed-title-templates = { $plan }: Schablonen
printed-subject-setup = Einrichtblätter für { $plan }, Ausgabe { $version }
printed-subject-coupon = Einrichten der Passprobe für { $plan }, Ausgabe { $version }
printed-subject-layout = Legeplan für { $plan }, Ausgabe { $version }
printed-subject-saw = Sägepläne für { $plan }, Ausgabe { $version }
printed-subject-art = Gravuren für { $plan }, Ausgabe { $version }
printed-subject-templates = Schablonen in voller Größe für { $plan }, Ausgabe { $version }
printed-release = Ausgabe { $version }
printed-page = Seite { $page } von { $pages }
printed-caution = Vorsicht
printed-safety = Sicherheit
printed-foot-layout = Legeplan, { $thick }
printed-foot-setup = Einrichten, { $thick }
printed-foot-art = Gravuren, { $thick }
printed-foot-coupon = Einrichten, Passprobe
printed-kicker-setup = Einrichten
printed-kicker-art = Gravur, Nullpunkt in der Mitte
printed-kicker-coupon = Einrichten, zuerst schneiden
printed-fit-coupon = Passprobe
printed-coupon-drawn = { $sheet }, gezeichnet für { $thickness }
printed-scrap = Ein Reststück von { $size }, Sichtseite oben
printed-art-deep = { $depth } tief, auf { $marks }
printed-art-size = Die Gravur misst { $size }
printed-art-too-large = Die Gravur ist größer als diese Seite: Für die volle Größe drucke die Datei
  der Gravur.
printed-drawn-for = { $sheet }, gezeichnet für gemessene { $thickness }
printed-measured = { $sheet }, gemessen { $thickness }
printed-sheet-number = Platte { $number } von { $sheets }
printed-lies = { $grain ->
    [0] { $size }, Sichtseite oben
   *[other] { $size }, Sichtseite oben, Faser entlang x
 }
printed-sheet-lies = { $grain ->
    [0] { $size }, Sichtseite oben.
   *[other] { $size }, Sichtseite oben, Faser von links nach rechts.
 }
printed-hatched = Schraffiert: für Spannmittel frei gehalten.
printed-mark = Zeichen
printed-piece = Stück
printed-overall = Größe über alles
printed-turned = Gedreht
printed-cutter = Fräser { $number }
printed-cuts = Schnitte
printed-steps = Schritte
printed-by-hand = Von Hand
printed-clamp = Spannen bei
printed-depth = Tiefe
printed-compare = Vergleichen
printed-between = Wege über der Platte, Fräserwechsel
printed-own-cutter = Fräser, Zustellungen und Zeiten sind die des Plans; mit einem anderen Fräser
  wähle deine eigenen und probiere sie aus.
printed-zero = Null x, y
printed-zero-z = Null z
printed-spoilboard = In die Opferplatte
printed-drawn-lines = Gezeichnete Linien
