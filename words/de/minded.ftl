# Was ein anderes Material mit sich bringt: Lesern gesagt und, auf Englisch, der Werkstatt beim Prüfen.
minded-overloaded = `{ $span }` ist für { $bears } berechnet, nicht für { $asked }
minded-lifts = `{ $span }` hebt mit { $lifts } an seinem Ende ab, nicht erst mit { $asked }
minded-lifts-spread = `{ $span }` hebt mit { $lifts } auf dem Überstand verteilt ab, nicht erst mit { $asked }
minded-pokes-through = `{ $item }` kommt durch `{ $part }` hindurch
minded-bites = `{ $item }` fasst { $bite } von `{ $part }`
minded-bolt-short = `{ $item }` ist zu kurz für seine beiden Teile
