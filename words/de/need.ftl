# Werkzeug, und was zu kaufen ist, alles so, wie es verkauft wird.
need-title = Was du brauchst
need-tools = Werkzeug
need-tool = Werkzeug
need-for = Wofür
need-tools-why = Womit du die Teile schneidest, steht dir frei: Jeder Weg hat sein Kapitel.
need-tools-bits = Bohrer sind für alle, die von Hand bohren; eine CNC-Fräse macht die meisten Löcher
    selbst.
need-count = Anzahl
need-sheets = Platten
need-sheet = Platte
need-size = Größe
need-along = Größe der Platten: zuerst entlang der Faser, dann quer dazu.
need-grade = Güte { $grade }
need-plies = { $plies ->
    [one] { $plies } Lage
   *[other] { $plies } Lagen
 }
need-boards = Bretter
need-board = Brett
need-section = Querschnitt
need-length = Länge zu kaufen
need-cut-from = für { $pieces }
need-hardware = Beschläge
need-item = Artikel
need-twin = Oder, in Zoll
need-hardware-sum = Die Anzahl ist über alle Schritte gezählt: Stück, nicht Packungen.
need-edges = Kanten
need-stretches = Strecken
need-together = Zusammen
need-to-buy = Zu kaufen
need-used-up = Leim, Oberfläche und was verbraucht wird
need-hardware-full = In wahrer Größe, wenn so gedruckt: die eigenen darauf legen. Köpfe und Beschläge weichen je nach Hersteller etwas ab.
