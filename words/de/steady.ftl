# Größe, Gewicht, wie fest es steht.
steady-size = Zusammengebaut, Breite × Tiefe × Höhe
steady-flat = Flach, alle Stücke in einem Stapel
steady-weight = Gewicht der Stücke
steady-centre = Schwerpunkt
steady-centre-at = { $height } über dem Boden, { $left } von links, { $front } von vorn
steady-floor = Auf dem Boden
steady-falls = Es steht nicht von selbst: Nichts Flaches berührt den Boden.
steady-around = { $size } um das, was ihn berührt
steady-tilted = Kippt leer, wenn geneigt um
steady-tilted-loaded = Kippt, an der Kante seiner Fläche belastet, wenn geneigt um
steady-with = { $tilt }, mit { $mass }
steady-angle = { $angle }, { $towards }
steady-by-itself = nichts: Es fällt von selbst um, { $towards }
steady-pushed = Kippt leer, wenn gestoßen mit
steady-push = { $force } oben, in { $top } Höhe, { $towards }
steady-towards = nach { $sides }
steady-side-front = vorn
steady-side-back = hinten
steady-side-left = links
steady-side-right = rechts
steady-side-front-left = vorn links
steady-side-front-right = vorn rechts
steady-side-back-left = hinten links
steady-side-back-right = hinten rechts
steady-note = Gerechnet für die Stücke allein, steif, leer und auf hartem, ebenem Boden. Ein Teppich, ein
  unebener Boden, lose Verbindungen und eine Last auf einer Seite machen es schlechter. Der Winkel ist
  eine Auskunft, keine Zulassung: Örtliche Vorschriften und Fachleute gehen vor.
steady-note-storing = Gerechnet für die Stücke allein, steif, leer und auf hartem, ebenem Boden. Ein
  Teppich, ein unebener Boden, Schubladen, lose Verbindungen und ein kletterndes Kind machen es
  schlechter. Der Winkel ist eine Auskunft, keine Zulassung: Örtliche Vorschriften und Fachleute gehen
  vor.
steady-wall = Was so hoch oder so schmal ist und Dinge aufbewahrt, gehört an der Wand befestigt.
