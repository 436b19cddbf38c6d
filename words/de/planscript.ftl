# Was Skripte der Seiten sagen: keine Auswahl darin, nur Werte.
planscript-found = { $found } von { $all } Plänen
planscript-none = Auf all das passt kein Plan.
