# Wie die Platten für mehrere Stück gezählt sind.
copies-together = Die Platten sind für alle { $called ->
    [set] Sätze
   *[copy] Stück
 } zusammen gezählt.
copies-apart = { $called ->
    [set] Jeder Satz
   *[copy] Jedes Stück
 } ist mit eigenen ganzen Platten gezählt; zusammen ausgelegt werden es vielleicht weniger.
