# Etwas im Gebrauch: wozu es taugt, seine Zahlen und worauf sie beruhen.
inuse-heading = Schätzungen, keine zugesagte Tragkraft
inuse-caution-estimates = Schätzungen aus angegebenen Werten für etwas Steifes und Heiles auf
    hartem, ebenem Boden; keine zugesagte Tragkraft. Probiere es vorsichtig aus, bevor du ihm
    traust.
inuse-caution-more = Wer springt, kippelt, klettert oder darauf steht, verlangt mehr, als hier
    berechnet ist.
inuse-caution-codes = Örtliche Vorschriften und die Regeln des Fachs gehen vor.
inuse-on = { $thing } auf { $others }
inuse-alone = { $thing }, für sich
inuse-doing-sit-in-the-middle = Sitzen
inuse-doing-stand-things-on = Tragen
inuse-doing-store-things = Aufbewahren
inuse-doing-lean-on = Anlehnen
inuse-doing-plane-along = Hobeln
inuse-for = zum { $uses }
inuse-not-for = nicht zum { $uses }: { $why }
inuse-sags-sat = { $panel } mit einer Person in der Mitte biegt sich durch
inuse-sags = { $span } biegt sich durch
inuse-no-span = für { $part } ist keine Spannweite angegeben
inuse-not-known = nicht bekannt
inuse-with = mit { $load }
inuse-first-day = { $sag } am ersten Tag
inuse-after-years = { $sag } nach Jahren
inuse-no-creep = nach Jahren: nicht bekannt, kein Kriechen angegeben
inuse-edge = Eine Last auf der Kante kippt es
inuse-edge-nowhere = nirgends: Sie bleibt über { $on ->
    [others] dem, worauf es liegt
   *[feet] den Füßen
 }
inuse-nearest = am nächsten { $towards }, { $inside } innerhalb
inuse-edge-from = Eine Last auf der Kante kippt es{ $on ->
    [others] {" "}herunter
   *[feet] {""}
 }, ab
inuse-load-towards = { $load } { $towards }
inuse-reaches = dort reicht es { $beyond } über { $on ->
    [others] das hinaus, worauf es liegt
   *[feet] die Füße hinaus
 }
inuse-may-be-near = { $who ->
    [person] eine Person von { $mass } darf dieser Kante nicht näher als { $near } sein
   *[load] eine Last von { $mass } darf dieser Kante nicht näher als { $near } sein
 }
inuse-may-be-anywhere = { $who ->
    [person] eine Person von { $mass } darf überall sein
   *[load] eine Last von { $mass } darf überall sein
 }
inuse-edge-sat = Mit einer Person auf dieser Kante kippt es
inuse-tips-itself = von selbst, { $towards }
inuse-tips-tilted = um { $angle } geneigt, { $towards }
inuse-person-of = eine Person von { $mass }
inuse-pushed = Gestoßen { $way }, leer
inuse-pushed-up = gestoßen in { $height } Höhe
inuse-pushed-loaded = mit der Person darauf: { $moves }
inuse-first-slides = es rutscht{ $on ->
    [others] {" "}auf dem, worauf es liegt,
   *[floor] {""}
 } bei { $slide }, ehe es bei { $tip } kippt
inuse-first-tips = es kippt bei { $tip }, ehe es{ $on ->
    [others] {" "}auf dem, worauf es liegt,
   *[floor] {""}
 } bei { $slide } rutscht
inuse-leans = Es neigt sich { $way }
inuse-tabs-there = { $tabs ->
    [0] kein Zapfen dort; { $kept }
    [one] { $tabs } Zapfen dort; { $kept }
   *[other] { $tabs } Zapfen dort; { $kept }
 }
inuse-joints-alone = nichts als die Verbindungen hält einem Stoß stand
inuse-stiff-panel = eine Platte versteift es: { $by }
inuse-stiff-brace = eine Strebe versteift es: { $by }
inuse-stiff-bolted-shoulder = eine verschraubte Schulter versteift es: { $by }
inuse-lean-upto = bis zu { $most } oben, durch das Spiel seiner Verbindungen
inuse-lean-none = gar nicht: Was in Stoßrichtung steht, oder Schrauben, lassen kein Spiel
inuse-lean-unknown = nicht bekannt: In dieser Richtung hält es kein Zapfen
inuse-rest-person = Person
inuse-rest-push = Stoß einer Person, die sich anlehnt oder hobelt
inuse-rest-friction = Reibung zwischen Füßen und Boden
inuse-rest-stands = Es steht
inuse-stands-free = frei auf dem Boden
inuse-stands-fixed = frei auf dem Boden, wie bevor es an der Wand befestigt wird
inuse-rest-carrying = Platte, die trägt
inuse-carrying-panel = { $panel }, die höchste breite, die flach liegt
inuse-carrying-none = keine liegt flach: was davon am höchsten ist
inuse-rest-tipping = Kippen
inuse-tipping-is = über die Hülle dessen, was den Boden berührt; eine Last an der Kante der Platte,
    wenn Last × Überstand über die Füße mehr ist als eigenes Gewicht × Abstand seiner Mitte von
    deren Rand
inuse-rest-pushing = Stoßen
inuse-pushing-is = waagrecht, in Höhe der Platte, die schlechtere der beiden Richtungen
inuse-rest-lean = Neigung
inuse-lean-is = jeder Zapfen dreht sich in seinem Schlitz um das Doppelte der Passung durch seine
    Tiefe
inuse-rest-stiffening = Versteifung
inuse-stiffening-is = eine Platte, halb so hoch wie die Ständer, eine mit Schrauben angezogene
    Schulter oder Streben, zusammen ein Viertel so hoch
inuse-rest-held = Es ist auf dem gehalten, was es trägt
inuse-held-by = { $held ->
    [clamped] durch Zwingen: Alles bewegt sich als ein Körper
    [screwed] durch Schrauben: Alles bewegt sich als ein Körper
   *[brackets] durch Winkel: Alles bewegt sich als ein Körper
 }
inuse-rest-loose = Es liegt lose auf dem, was es trägt
inuse-loose-is = nur sein eigenes Gewicht hält es dort: Es kippt über die Hülle der Oberseiten
    herunter
inuse-rest-loose-pushed = Ein Stoß gegen das, was lose liegt
inuse-loose-pushed-is = erreicht seine Stützen durch Reibung; jede nimmt einen gleichen Teil der
    Last und kippt um ihren eigenen Fuß
inuse-source-en1022 = im Plan angegeben, sonst der Geltungsbereich von EN 1022:2018
inuse-source-stated = im Plan angegeben, sonst allgemeiner Gebrauch, keine einzelne Quelle
inuse-source-friction = im Plan angegeben, sonst 0,3, Holz auf hartem Boden; aus dem Gedächtnis
inuse-source-simplified = Vereinfachung
inuse-source-together = der zusammengebaute Plan
inuse-source-statics = Statik des starren Körpers
inuse-source-angles = Geometrie kleiner Winkel; Nachgeben des Holzes nicht gerechnet
inuse-source-practice = allgemeiner Gebrauch, keine einzelne Quelle
inuse-title = Im Gebrauch
inuse-rests = Worauf diese Schätzungen beruhen
