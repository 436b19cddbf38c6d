# Wörter der Seiten: stock.
pagestock-title = Worauf die Zahlen beruhen
pagestock-lead = Platten, Leisten, Fräser, Beschläge, Papiere und Spandicken, wie die Pläne hier mit ihnen rechnen, und woher jede Zahl kommt.
pagestock-contents = Inhalt
pagestock-chip-loads = Der Span, den jede Schneide bei einer Umdrehung nimmt. Veröffentlichte Tabellen weichen um ein Vielfaches voneinander ab, je nach der Maschine, für die sie gedacht sind: keine wird mit einer anderen vermischt, und das Logbuch einer Maschine geht ihnen allen vor. Wo kein Fräser genannt ist, nennt die Tabelle keinen.
pagestock-depth-rules = Wie tief ein Durchgang gehen darf, und welcher Anteil der Spandicke dann bleibt. Beginne dort, wo die ganze Spandicke bleibt.
pagestock-movements = Um wie viel ein Maß für jedes Prozent Feuchte wächst, das ein Werkstoff aufnimmt, und welche Feuchte er beim Kauf hat. Wie feucht er wird, folgt aus der Luftfeuchte des Ortes, an dem er lebt.
pagestock-finishes = Wie dick eine Schicht ist, solange sie nass ist, und welcher Anteil davon bleibt. Was auf der Dose steht, geht vor.
pagestock-sheets = Steifigkeit ist der Elastizitätsmodul und Festigkeit die Biegefestigkeit der flach belasteten Platte. Kriechen ist der Faktor für dauernde Last in einem geheizten Raum.
pagestock-letters = Ein Buchstabe führt zur Anmerkung am Ende seiner Liste. „From memory“ (aus dem Gedächtnis) heißt, dass das Dokument nicht zur Hand war, als die Zahl notiert wurde: schlag sie nach, bevor du dich auf sie verlässt. Dateien unter { $folder } sind die der Werkstatt; der Rest kommt mit dem Programm. Nichts hier ist ein zugesicherter Wert: miss die Platte, die du hast, und gib Vorschriften und Fachleuten den Vorrang.
pagestock-about = Platten, Leisten, Fräser, Beschläge und Spandicken: jede Zahl mit ihrer Quelle.
pagestock-no-source = keine Quelle genannt
pagestock-minimum = Mindestwerte
pagestock-characteristic = Werte, die 19 von 20 Stücken erreichen
pagestock-mean = Mittelwerte
pagestock-claim = wie angegeben
pagestock-kind = { $kind }; { $source }
pagestock-items = { $count ->
    [one] { $count } Eintrag
   *[other] { $count } Einträge
 }
