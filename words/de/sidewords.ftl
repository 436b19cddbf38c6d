# Auf welcher Seite einer gezeichneten Linie der Fräser läuft.
sidewords-finished = Die fertige Kante
sidewords-on = { $what } auf ihnen
sidewords-inside = { $what } innerhalb
sidewords-outside = { $what } außerhalb
sidewords-for = { $offset } für { $cutter }
sidewords-lines = Linien sind die fertige Kante: { $sides }, um die halbe Breite des Fräsers.
sidewords-lines-off = Linien sind die fertige Kante: { $sides }, um die halbe Breite des Fräsers,
    { $offsets }.
