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
trials-outcome = { $outcome ->
    [clean] Sauber
    [light-fuzz] Leicht fransig
    [fuzz-to-sand] Fransen zum Schleifen
    [chipped] Ausgerissen
    [burned] Verbrannt
   *[other] { $outcome }
 }
