# Wörter der Seiten: parts.
pageparts-table = Tabelle
pageparts-table-of = Tabelle: { $heads }
pageparts-instead = Anstelle eines Fotos: { $made }.
pageparts-for = Für { $plan }
pageparts-outcome = { $outcome ->
    [clean] Sauber
    [light-fuzz] Leicht fransig
    [fuzz-to-sand] Fransen zum Schleifen
    [chipped] Ausgerissen
    [burned] Verbrannt
   *[other] { $outcome }
 }
