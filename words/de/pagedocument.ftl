# Wörter der Seiten: document.
pagedocument-pictures = { $count } Bilder nebeneinander
pagedocument-slides = Zeichnung, lässt sich seitwärts schieben
pagedocument-slide = Seitwärts schieben zeigt mehr
pagedocument-large = Groß öffnen
pagedocument-caution = Vorsicht
pagedocument-by-hand = Von Hand:
pagedocument-chapters = Kapitel
pagedocument-path = Wähle deinen Weg
pagedocument-then = Danach: { $chapters }
pagedocument-this-plan = Für diesen Plan
pagedocument-unit = Einheit
pagedocument-inches = Zoll
