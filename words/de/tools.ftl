# Das Werkzeug und was es verbraucht.
tools-caliper = Messschieber
tools-thickness = { $unit ->
    [in] die Dicke der Platte, auf 0,001 in (0,03 mm)
   *[mm] die Dicke der Platte, auf 0,05 mm (0,002 in)
 }
tools-router = mit einer CNC-Fräse
tools-router-wide = mit einer CNC-Fräse, { $wide } breit
tools-drill = Bohrer, { $wide }
tools-holes = { $count ->
    [one] { $count } Loch in { $parts }
   *[other] { $count } Löcher in { $parts }
 }
tools-edges = { $count ->
    [one] { $count } Bohrung in eine Kante von { $parts }
   *[other] { $count } Bohrungen in Kanten von { $parts }
 }
tools-holes-deep = { $holes }, { $deep } tief
tools-holes-for = { $holes }: { $bored }
tools-sunk = worin ein Kopf versinkt
tools-pilot = Vorbohrungen für { $items }
tools-bored = für { $items }
tools-steps = { $count ->
    [one] Schritt { $steps }
   *[other] Schritte { $steps }
 }
tools-glue = Holzleim, für die Verbindungen
tools-finish-before = { $finish }, für { $coats ->
    [one] { $coats } Anstrich
   *[other] { $coats } Anstriche
 } vor dem Zusammenbauen
tools-finish-after = { $finish }, für { $coats ->
    [one] { $coats } Anstrich
   *[other] { $coats } Anstriche
 }, wenn es steht
