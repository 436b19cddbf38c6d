# Wie schwierig ein Plan zu bauen ist und warum.
difficulty-easy = Leicht
difficulty-care = Etwas Sorgfalt
difficulty-demanding = Anspruchsvoll
difficulty-size = { $pieces ->
    [one] { $pieces } Stück
   *[other] { $pieces } Stücke
 }{ $steps ->
    [0] {""}
    [one] {" "}in { $steps } Schritt
   *[other] {" "}in { $steps } Schritten
 }
difficulty-joints-fingers = Zinken, die alle zugleich hineingehen
difficulty-joints-blind = Nuten oder Vertiefungen, deren Tiefe stimmen muss
difficulty-joints-edges = Kanten, die beim Verschrauben rechtwinklig gehalten werden
difficulty-joints-wedges = Keile, die nach Gefühl eingeschlagen werden
difficulty-joints-glued = es wird geleimt: Was abgebunden hat, lässt sich nicht mehr richten
difficulty-joints-bored = Löcher, die von Hand in Kanten gebohrt werden
difficulty-joints-squared = Innenecken, die von Hand rechtwinklig gemacht werden
difficulty-plain = einfache Verbindungen, die von Hand zusammengehen
difficulty-driven = Verbindungen, die eingetrieben werden und durch Klemmen halten
difficulty-tight = enge Verbindungen, mit { $room } Spiel auf jeder Seite
difficulty-slant = Teile, die sich unter { $angle } treffen, nicht rechtwinklig
difficulty-at-once = { $joints ->
    [one] { $joints } Verbindung, die in Schritt { $step } auf einmal zusammengeht
   *[other] { $joints } Verbindungen, die in Schritt { $step } auf einmal zusammengehen
 }
difficulty-lifted = { $mass }, in Schritt { $step } auf einmal zu bewegen
