# Über diesen Plan: von wem er ist und wie er entstanden ist.
about-title = Über diesen Plan
about-licence = Lizenz
about-text = Ihr Text: { $address }, im Paket { $file }
about-maker = Die Werkstatt
about-pictures = Bilder
about-newest = Die neueste Ausgabe
about-stand = Korrekturen und spätere Ausgaben stehen unter { $address }
about-how = Wie er entstanden ist
about-made = { $title }, Ausgabe { $version } vom { $day }, entworfen von { $maker }. Berechnet,
    gezeichnet und gesetzt von Kerfolio aus einem einzigen Plan, in Source Serif und Source Sans.
    Jede Zahl hier, in den Listen und in den Schnittdateien kommt aus diesem Plan.
