# Was Skripte der Seiten sagen: keine Auswahl darin, nur Werte.
drawscript-drawing = Zeichnung
drawscript-keys = { $name }; Pfeiltasten bewegen sie, + und − ändern ihre Größe
drawscript-smaller = Kleiner
drawscript-larger = Größer
drawscript-whole = Ganz
drawscript-close = Schließen
drawscript-copied = Kopiert.
