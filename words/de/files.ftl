# Alle Dateien eines Pakets, und wozu sie da sind.
files-title = Alle Dateien
files-first = Lies das zuerst
files-first-why = Das Bauheft, die Passprobe, die vor allem anderen geschnitten wird, und die Lizenz.
files-checking = Zum Prüfen und für Programme
files-for-plan = { $file } erklärt den ganzen Plan anderen Programmen.
files-for-sums = { $file } enthält eine Prüfsumme für jede Datei: Eine Datei, die nicht darin steht oder
    davon abweicht, ist nicht von der Werkstatt.
files-in-cut = Schnittdateien für eine CNC-Fräse, ein Ordner für jede Dicke, die bereitsteht;
    Gravuren allein, mittig, in engravings.
files-in-templates = Papierschablonen in voller Größe zum Ausschneiden, für jede Dicke eine Datei
    mit allen Teilen.
files-in-lists = Was zu schneiden und was zu kaufen ist, als Tabellen, die jede Tabellenkalkulation
    öffnet.
files-in-setup = Für die Maschine: wo die Platte liegt, welcher Fräser, in welcher Reihenfolge, für
    jede Dicke, die bereitsteht.
files-in-layout = Bilder jeder Platte mit ihren Stücken, für jede Dicke, die bereitsteht; saw ist
    für eine Tischkreissäge.
files-in-model = Das Ganze in drei Dimensionen.
files-shelf = { $folder } ({ $files ->
    [one] { $files } Datei
   *[other] { $files } Dateien
 })
