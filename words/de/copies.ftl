# Wie die Platten für mehrere Stück gezählt sind.
copies-together = Die Platten sind für alle { $called ->
    [set] Sätze
   *[copy] Nachbauten
 } zusammen gezählt.
copies-apart = { $called ->
    [set] Jeder Satz
   *[copy] Jeder Nachbau
 } ist mit eigenen ganzen Platten gezählt; zusammen ausgelegt werden es vielleicht weniger.
