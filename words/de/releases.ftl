# Ausgaben eines Plans.
releases-title = Ausgaben
releases-correction = Korrektur: Dateien vor dieser Ausgabe waren falsch
