# Die Seite der Schablonen, die zuerst allein gedruckt wird.
firstprint-title = Drucke zuerst nur diese Seite
firstprint-templates = Schablonen
firstprint-what = { $plan }: Schablonen. Drucke mit 100 %: „tatsächliche Größe“, ohne Anpassen an die
  Seite.
firstprint-for = Für { $sheets }
firstprint-part = Teil
firstprint-pages = Seiten
firstprint-measure-head = Miss das Quadrat
firstprint-measure = Lege ein Stahllineal an beide Seiten. Jede muss { $side } messen, auf { $within }
  genau (üblich beim Schneiden von Hand).
firstprint-other-mm = Die Striche bei { $other } sind für ein Lineal mit Zoll.
firstprint-other-in = Die Striche bei { $other } sind für ein Lineal mit Millimetern.
firstprint-no-rule = Kein Lineal zur Hand?
firstprint-card = Eine Bankkarte deckt den Umriss im Quadrat genau ab: { $size }.
firstprint-a-card = eine Bankkarte, { $size }
firstprint-alt = Ein Quadrat von { $side } mit einer Karte
firstprint-off-head = Wenn nur eine Richtung falsch ist
firstprint-off = Beide Seiten gleich falsch: Das Programm hat die Seite skaliert; suche nach
  „anpassen“, „verkleinern“ oder „Skalierung“ und stelle 100 % ein. Nur eine Seite falsch: Der
  Drucker zieht das Papier zu weit oder nicht weit genug ein. Nimm dickeres Papier, eine langsamere
  Einstellung oder den geraden Einzug, oder lass die Seite für die Rolle in einem Laden drucken.
firstprint-off-tiles = Bleibt es dabei, lege die Kacheln nach ihrem wahren Abstand statt nach den
  Kreuzen. Miss die { $side } am oberen und am linken Rand einer Kachel und verschiebe jede nächste
  Kachel in der falschen Richtung um die Länge in der Tabelle: auseinander, wenn der Druck zu kurz
  ist, zusammen, wenn er zu lang ist. Ein Teil auf einer einzigen Seite berichtigst du von Hand:
  Seine wahre Größe steht oben. Schlitze richten sich nach deiner Platte, nicht nach dem Papier.
firstprint-reads = { $side } misst
firstprint-short-edge = Kurze Kante
firstprint-long-edge = Lange Kante
firstprint-shift = Verschiebung von einer Kachel zur nächsten, entlang der kurzen oder der langen Kante
  des Papiers: entsprechend weniger, wo sie in der Übersicht näher beieinanderliegen.
