# Das Zusammenbauen, Schritt für Schritt.
steps-title = Zusammenbauen
steps-ahead = { $count ->
    [one] { $count } Schritt
   *[other] { $count } Schritte
 }.
steps-taking = { $count ->
    [one] { $count } Schritt
   *[other] { $count } Schritte
 }, zusammen etwa { $time }.
steps-have = Halte bereit: { $tools }.
steps-need-pieces = Stücke
steps-need-hardware = Beschläge
steps-need-tools = Werkzeug
steps-need-time = Zeit
steps-need-wedges = Keile
steps-wedge = { $piece }: eingetrieben sitzt er etwa { $drive } tiefer als gezeichnet, und am dicken Ende stehen { $left } heraus
steps-wedge-behind = { $piece }: eingetrieben sitzt er etwa { $drive } tiefer als gezeichnet, und am dicken Ende stehen { $left } heraus. Hinter dem Schlitz bleiben { $behind } Holz
steps-need-people = Leute
steps-need-holds = Solange gehalten
steps-need-order = Nacheinander
steps-film = Der Film
steps-watch = Sieh zu, wie es gebaut wird: { $address }
steps-film-parts = Was im Film zu sehen ist
steps-film-at = Ab
steps-film-what = Was
