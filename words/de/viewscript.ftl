# Was Skripte der Seiten sagen: keine Auswahl darin, nur Werte.
viewscript-step = Schritt { $step } ({ $pieces })
viewscript-step-title = Schritt { $step }: { $title } ({ $pieces })
viewscript-finished = Fertig
viewscript-joins = Schritt { $step } { $title }
