# Fragen, die alle stellen.
questions-title = Fragen und Antworten
questions-thickness = Meine Platte ist nicht genau so dick. Was nun?
questions-any-thickness = Das ist kaum eine. Der Plan ist für { $sheets }, und jeder Schlitz richtet
    sich nach dem, was du gemessen hast: Öffne start-here.html, auf einem Rechner oder Telefon, ganz ohne Netz, und tippe
    deine Messwerte ein.
questions-some-thicknesses = Das ist kaum eine. Der Plan ist für { $sheets }, in { $sets } Sätzen von
    Dateien: Nimm den, den deine dickste Messung nennt.
questions-one-thickness = Der Plan ist allein für { $sheets }: Nimm eine Platte, die so viel misst.
questions-cutter = Welchen Fräser brauche ich?
questions-cutters = { $cutters } für eine CNC-Fräse, oder einen kleineren; ein größerer lässt in
    Innenecken zu viel stehen. Mit einer Säge oder von Hand keinen.
questions-sheets = Wie viele Platten kaufe ich?
questions-some-sheets = { $count ->
    [one] { $count } Platte { $sheet }, { $size }
   *[other] { $count } Platten { $sheet }, { $size }
 }
questions-all-sheets = { $sheets }, so wie dieser Plan sie belegt.
questions-formats = Welche Dateiformate gibt es?
questions-files = Schnittdateien gibt es { $coming }, eine Datei für jede Platte und eine für jedes
    Teil. Schablonen, Bauheft, Legepläne und Einrichtblätter sind PDF, auf A4 und auf US Letter.
    Listen sind CSV, das jede Tabellenkalkulation öffnet.
questions-selling = Darf ich verkaufen, was ich baue?
