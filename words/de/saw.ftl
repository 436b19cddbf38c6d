# Wie eine Säge Platten und Bretter schneidet.
saw-title = Mit Tischkreissäge oder Tauchsäge
saw-sizes = Die { $parts } nennt jedes Gesamtmaß. Für Teile mit Rundungen und Schlitzen nimm eine
    { $template }.
saw-parts-list = Liste der Teile
saw-template = Schablone
saw-files = Die Sägepläne zeigen jeden Schnitt der Reihe nach, mit jeder Einstellung des Anschlags:
    { $one } oder { $other }.
saw-caution = An der Säge
saw-sheet = Platte { $number } von { $count }, { $sheet }: { $cuts ->
    [one] { $cuts } Schnitt
   *[other] { $cuts } Schnitte
 } von Kante zu Kante in der Reihenfolge ihrer Nummern, { $settings ->
    [one] { $settings } Einstellung
   *[other] { $settings } Einstellungen
 } des Anschlags.
saw-boards = Bretter
saw-trim = Schneide von einem Ende { $trim } ab, damit es rechtwinklig beginnt, dann säg in der
    gezeichneten Reihenfolge; die Säge nimmt jenseits jeder Länge { $kerf } weg.
