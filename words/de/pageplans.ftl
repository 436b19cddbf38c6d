# Wörter der Seiten: plans.
pageplans-category = Art
pageplans-tag = Stichwort
pageplans-level = Wie schwierig
pageplans-access = Für wen
pageplans-open = für alle offen
pageplans-closed = für Unterstützer
pageplans-any = alle
pageplans-word = Ein Wort daraus
pageplans-more = Mehr Pläne zeigen
