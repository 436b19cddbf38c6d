# Was ein anderes Material ändert.
swap-remark = Berechnet für das, was jede Platte im Mittel misst, die Verbindungen bewiesen für
    alles, womit sie verkauft wird. Schätzungen, keine zugesagte Tragkraft; Schnitteinstellungen sind
    die des eigenen Materials des Plans.
swap-refused = { $count ->
    [one] Abgelehnt: { $count } Sache hält nicht mehr.
   *[other] Abgelehnt: { $count } Sachen halten nicht mehr.
 }
swap-minded = { $count ->
    [one] Es geht zusammen; { $count } Sache ist zu beachten.
   *[other] Es geht zusammen; { $count } Sachen sind zu beachten.
 }
swap-holds = Es geht zusammen, und nichts ist anzumerken, was nicht vorher schon war.
swap-of-sheet = { $what }, { $sheet }
swap-thickness = Dicke
swap-range = { $drawn }, für { $range }
swap-weight = Gewicht
swap-sheets = Platten
swap-price = Preis der Platten
swap-edges = Schnittkanten
swap-damp = Feuchte
swap-in-english = Die Prüfung sagt dazu auf Englisch: „{ $message }“
swap-unknown = nicht bekannt
swap-no-figure = keine Zahl im Lager
swap-unreckoned = nicht bekannt: { $why }
swap-bears = trägt { $bears }, verlangt { $asked }
swap-sags = biegt sich { $sag } durch, Grenze { $limit }; trägt { $bears }, verlangt { $asked }
swap-pull-face = { $screw }, Zug in der Fläche von { $part }
swap-pull-edge = { $screw }, Zug in einer Kante von { $part }
