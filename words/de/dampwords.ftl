# Was Anstrich und Feuchte mit den Verbindungen machen.
dampwords-room = Dafür haben die Verbindungen Platz neben ihrer Passung: Roh und trocken gehen sie
    lockerer zusammen, als sie bleiben.
dampwords-place = Es ist gemacht für { $climate ->
    [dry] einen trockenen Raum
    [heated-room] einen beheizten Raum
    [shed] einen Schuppen
   *[outdoors] draußen
 }, in Luft von { $least } bis { $most } % Feuchte.
dampwords-unknown = Wie { $sheet } quillt, ist nicht bekannt.
dampwords-swells = { $sheet } hat beim Kauf { $bought } % Holzfeuchte; dort kommt es auf { $most } %
    und wird { $thicker } dicker.
dampwords-stays = { $sheet } hat beim Kauf { $bought } % Holzfeuchte; dort bleibt es darunter und
    quillt nicht.
dampwords-before = Vor dem Zusammenbauen wird es { $coats ->
    [one] einmal
   *[other] { $coats }-mal
 } gestrichen, mit: { $finish }. Das ist ein Film von { $film } im Ganzen. Er liegt auf jeder Fläche
    und Wand, so dass jede Seite einer Verbindung ihn zweimal hat.
dampwords-after = Nach dem Zusammenbauen wird es { $coats ->
    [one] einmal
   *[other] { $coats }-mal
 } gestrichen, mit: { $finish }. Das ist ein Film von { $film } im Ganzen. In den Verbindungen liegt
    nichts davon.
dampwords-sanded = Das Schleifen davor nimmt { $off } von jeder Fläche.
dampwords-glue = Halte den Film von allem fern, was geleimt wird: Kleb die Flächen ab, die sich
    berühren.
