# Schablonen: Kacheln, ihre Übersichten, Orte auf Teilen.
tiles-page = Seite { $page } von { $pages }
tiles-cut = { $count }-mal
tiles-overall = { $wide } breit, { $high } hoch
tiles-print-at = mit 100 % drucken
tiles-whole = ganz
tiles-tile = Kachel { $tile }
tiles-place = Kachel { $tile }: Reihe { $row } von { $rows }, Spalte { $column } von { $columns }
tiles-full-size = { $part } in voller Größe, { $where }
tiles-side-by-side = Die Kacheln { $tiles } nebeneinandergelegt
tiles-lie = Wie die Kacheln liegen
tiles-on-pages = { $tiles ->
    [one] { $tiles } Kachel
   *[other] { $tiles } Kacheln
 } auf den Seiten { $first } bis { $last }, benannt nach Reihe von oben und Spalte von links.
tiles-blank = { $blank ->
    [one] { $blank } ohne Linie ist grau und nicht gedruckt.
   *[other] { $blank } ohne Linie sind grau und nicht gedruckt.
 }
tiles-laying = Schneide eine von zwei Nachbarinnen an der gestrichelten Linie ab, lege Kreuz auf
  Kreuz und klebe sie zusammen. Nachbarinnen überlappen um { $overlap }.
tiles-head-middle = Mitte von
tiles-head-left = Von links
tiles-head-below = Von unten
tiles-more = { $count ->
    [one] { $count } weitere wird auf den Kacheln gemessen.
   *[other] { $count } weitere werden auf den Kacheln gemessen.
 }
