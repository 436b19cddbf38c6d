# Wörter der Seiten: parts.
pageparts-table = Tabelle
pageparts-table-of = Tabelle: { $heads }
pageparts-for = Für { $plan }
