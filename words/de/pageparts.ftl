# Wörter der Seiten: parts.
pageparts-table = Tabelle
pageparts-table-of = Tabelle: { $heads }
pageparts-instead = Anstelle eines Fotos: { $made }.
pageparts-for = Für { $plan }
