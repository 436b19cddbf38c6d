# Wie Teile, Stücke und Ausarbeitungen heißen.
titles-test-joint = Probeverbindung
titles-piece = { $part } { $piece }
titles-of-copy = { $piece } von { $thing } { $copy }
titles-of-number = { $piece } von Nummer { $copy }
titles-feature-of = { $feature } ({ $part })
