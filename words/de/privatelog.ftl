# Die private Seite des Logbuchs: was die Website von keinem Eintrag zeigt.
privatelog-release = Ausgabe
privatelog-part = Teil
privatelog-sheet = Platte
privatelog-thickness = Dicke
privatelog-fit = Passung je Seite
privatelog-outcome = Wie es wurde
privatelog-batch = Lieferung
privatelog-readings = Gemessen
privatelog-moisture = Feuchte
privatelog-operation = Was gefräst wurde
privatelog-direction = Richtung
privatelog-workholding = Gehalten mit
privatelog-extraction = Absaugung
privatelog-went = Die Verbindung ging
privatelog-true-cut = Wahrer Schnitt
privatelog-top = Obere Kante
privatelog-bottom = Untere Kante
privatelog-show-side = Fläche
privatelog-metres = Weg des Fräsers
privatelog-reckoned-minutes = Minuten gerechnet
privatelog-minutes = Minuten
privatelog-hours = Arbeitsstunden
privatelog-money = Geld
privatelog-finishes = Anstriche
privatelog-glues = Leime
privatelog-mistakes = Fehler
privatelog-repairs = Ausgebessert
privatelog-word = { $word ->
    [through] durch
    [part-way] nicht durch
    [letters] Buchstaben
    [holes] Löcher
    [climb] im Gleichlauf
    [conventional] im Gegenlauf
    [rattles] sie klappert
    [by-hand] von Hand
    [by-palm] mit dem Handballen
    [by-mallet] mit dem Klüpfel
   *[stuck] sie klemmt fest
 }
privatelog-cutters = Fräser
privatelog-sent = Was Nachbauende gemessen haben
privatelog-shown = Auf der Website
