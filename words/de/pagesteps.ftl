# Wörter der Seiten: steps.
pagesteps-title = Schritt für Schritt
pagesteps-lead = Ausgabe { $release }. { $count ->
    [one] { $count } Schritt
   *[other] { $count } Schritte
 }.
pagesteps-lead-tools = Ausgabe { $release }. { $count ->
    [one] { $count } Schritt
   *[other] { $count } Schritte
 }; halte bereit: { $tools }.
pagesteps-back = Zurück zu { $step }
pagesteps-on = Weiter zu { $step }
pagesteps-to-plan = Zurück zum Plan
pagesteps-head = { $plan }, Schritt für Schritt
pagesteps-about = Wie man { $plan } zusammenbaut, Ausgabe { $release }.
