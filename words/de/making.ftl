# Was ein Plan ergibt.
making-line = { $thing }: { $count } machen
making-set = Ein Satz: { $things }.
making-rest = Bretter und Beschläge für alles
making-weighs = Der Satz wiegt
making-size = Wie gezeichnet, Breite × Tiefe × Höhe
making-lies-on = { $thing } liegt auf
making-held-lying = { $things }, lose
making-held-clamped = { $things }, daran festgeklemmt
making-held-screwed = { $things }, daran festgeschraubt
making-held-brackets = { $things }, von Winkeln gehalten
making-beyond = { $beyond } über das äußerste hinaus
making-each = je { $mass }
making-not-shown = Nicht gezeigt: { $pieces }.
making-one-set = Satz
making-many-set = Sätze
making-one-copy = Nachbau
making-many-copy = Nachbauten
