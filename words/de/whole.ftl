# Was entsteht, zusammengebaut.
whole-title = Das Ganze
whole-set = Der ganze Satz mit seinen Gesamtmaßen.
whole-together = Zusammengebaut, mit seinen Gesamtmaßen.
whole-apart = Die Stücke auseinandergezogen, mit ihren Zeichen.
whole-wall = An der Wand befestigen
whole-steady = Wie sicher es steht
