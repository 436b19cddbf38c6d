# Wie Sägepläne gelesen werden und worauf an der Säge zu achten ist.
sawwords-how = Stell den Anschlag für alle Schnitte einer Zeile einmal ein und mach sie dann der
    Reihe nach. Leg die Stücke, wie sie im Bild liegen: Ein Längsschnitt wird von der unteren Kante
    gemessen, ein Querschnitt von der linken, und die Schnittfuge liegt außerhalb des Maßes. Ein
    Säumschnitt nimmt sein Maß von der Kante weg, die Schnittfuge mitgezählt.
sawwords-caution = Schutzhaube und Spaltkeil dran, Schiebestöcke zur Hand; nie Anschlag und
    Gehrungslehre für denselben Schnitt. Schneide große Platten mit Schiene und Hilfe, kurze oder
    schmale Stücke mit einem Schlitten oder von Hand. Die Anleitung der Säge, örtliche Vorschriften
    und die Regeln des Fachs gehen vor.
sawwords-spare = Geformte Teile werden als Zuschnitte mit { $spare } Zugabe gesägt und nach ihren
    Schablonen geformt.
