# Was unterwegs ausprobiert wurde.
trials-title = Versuche
trials-mind = Was die Werkstatt unterwegs ausprobiert hat. Einstellungen einer Maschine und einer
    Platte: Fang mit deiner niedriger an.
trials-set-sheet = Platte
trials-set-measured = Gemessen
trials-set-cutter = Fräser
trials-set-speed = Drehzahl
trials-set-feed = Vorschub
trials-set-plunge = Eintauchen
trials-set-passes = Durchgänge
trials-set-fit = Passung je Seite
trials-rpm = { $speed } U/min
trials-graded = { $grade }: { $marks }
trials-grade = { $grade ->
    [clean] Sauber
    [nearly-clean] Fast sauber
    [to-sand] Zu schleifen
    [to-mend] Auszubessern
   *[spoiled] Verdorben
 }
trials-mark = { $mark ->
    [fuzz] Flaum
    [burn] Brandspuren
    [chatter] Ratterspuren
    [tear-out] Ausrisse
   *[noise] Lärm
 }
trials-as-cut = So geschnitten
trials-as-cut-with = Platte und Fräser
trials-as-cut-set = Einstellungen
trials-as-cut-out = Wie es wurde
trials-as-cut-feed = Vorschub { $value }
trials-as-cut-plunge = Eintauchen { $value }
trials-as-cut-passes = Durchgänge { $value }
trials-as-cut-direction = Richtung: { $value }
trials-counted = { $count } × { $grade }
trials-gone-sheet = Aus { $sheet } geschnitten; daraus wird der Plan nicht mehr geschnitten.
trials-gone-thick = { $now ->
    [one] Aus { $thick } geschnitten; der Plan ist jetzt für { $least }.
   *[range] Aus { $thick } geschnitten; der Plan ist jetzt für { $least } bis { $most }.
 }
trials-gone-release = Nach Ausgabe { $release } geschnitten, die der Plan nicht mehr nennt.
trials-gone-otherwise = Nach einer älteren Ausgabe geschnitten; Ausgabe { $release } schneidet das anders.
trials-gone-since = Nach einer älteren Ausgabe geschnitten; seither kamen { $releases }, und nichts hält fest, ob sie
    das anders schneiden.
trials-grade-says = { $grade ->
    [clean] Nichts zu tun: So, wie es gefräst ist, kommt die Oberfläche darauf.
    [nearly-clean] Ein, zwei Striche mit feinem Papier, und es ist weg.
    [to-sand] Muss vor der Oberfläche überall geschliffen werden.
    [to-mend] Ausrisse oder Brandstellen sind zu füllen, nachzuschneiden oder zu verstecken.
   *[spoiled] Das Teil muss neu gefräst werden.
 }
trials-feel-says = { $feel ->
    [rattles] Es fällt zusammen und wackelt.
    [by-hand] Es geht von Hand zusammen und hält.
    [by-palm] Es braucht einen Druck mit dem Handballen.
    [by-mallet] Es braucht einen Hammer.
   *[stuck] Es geht nicht zusammen.
 }
