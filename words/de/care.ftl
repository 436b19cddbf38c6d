# Oberfläche und Pflege.
care-title = Pflege
care-title-finishing = Oberfläche und Pflege
care-after = Nach der ersten Saison
care-edges = Bearbeitete Kanten: { $edges }. { $drawings } zeigen, welche.
care-drawings = Die Zeichnungen der Teile
care-caution-oily = Ölgetränkte Lappen
care-beware-oily = Mit Öl getränkte Lappen, Pads und Papiere werden heiß, während das Öl trocknet,
    und können sich noch Stunden später von selbst entzünden. Breite sie im Freien flach zum
    Trocknen aus oder bewahre sie unter Wasser in einer geschlossenen Dose auf. Lass sie nie auf
    einem Haufen, im Mülleimer oder in der Tasche liegen. Was auf der Dose steht, geht vor.
care-caution-sanding = Schleifen
care-beware-sanding = Beim Schleifen entsteht der feinste Staub: Saug ihn ab, trag dazu eine Maske,
    und trage die Oberfläche erst auf, wenn er sich gesetzt hat und abgewischt ist.
care-look-coat = Wo Wasser nicht mehr in Tropfen darauf steht, gehört eine weitere Schicht hin.
care-look-bolts = Zieh jede Schraube mit Mutter nach: Holz schwindet, wenn es trocknet, und die
    Verbindung lockert sich.
care-look-screws = Probier jede Holzschraube: Eine, die sich dreht, ohne anzuziehen, hält nicht mehr.
care-look-wall = Zieh mit der Hand daran, wo es an der Wand befestigt ist: Nichts darf nachgeben.
care-look-glue = Sieh die geleimten Verbindungen entlang, ob sich eine Fuge geöffnet hat.
care-look-feet = Sieh zuerst nach den Füßen und den Schnittkanten: Dort dringt Feuchtigkeit ein.
