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
