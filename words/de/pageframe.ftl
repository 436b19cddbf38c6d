# Wörter der Seiten: frame.
pageframe-skip = Zum Text springen
pageframe-private = Privat: für die eigene Festplatte. Diese Seite gehört nicht zur Website; veröffentliche sie nicht.
pageframe-releases = { $house }: Ausgaben
pageframe-site = Website
pageframe-proposals = { $house }, von { $maker }. Diese Pläne sind Vorschläge: örtliche Vorschriften, die Anleitungen deiner Maschinen und zugelassene Fachleute gehen vor.
pageframe-write = Der Werkstatt schreiben
pageframe-rests = Worauf die Zahlen beruhen
pageframe-feed = Feed der Ausgaben
