# Was das Logbuch zu einer Platte und einem Fräser sagt.
logbest-on = { $cutter } auf { $sheet }
logbest-operation = { $operation ->
    [through] Durchgefräst
    [part-way] Nicht durchgefräst
    [letters] Schrift
   *[holes] Löcher
 }
logbest-chip = Spandicke
logbest-first = Erster Durchgang
logbest-rest = Danach
logbest-direction = Richtung
logbest-way = { $climb ->
    [yes] im Gleichlauf
   *[no] im Gegenlauf
 }
logbest-count = { $count } × { $grade }
logbest-known = { $well } von { $total } Schnitten mit ähnlichen Einstellungen wurden gut. Von allen solchen Schnitten
    werden es { $low } bis { $high } von hundert.
logbest-promising = Noch nicht sicher. { $well } von { $total } { $total ->
    [one] Schnitt
   *[other] Schnitten
 } mit ähnlichen Einstellungen { $well ->
    [one] wurde
   *[other] wurden
 } gut; { $needed ->
    [one] mit { $needed } weiteren guten wären sie
   *[other] mit { $needed } weiteren guten hintereinander wären sie
 } bekannt.
logbest-poor = Noch ist nichts Gutes bekannt. Von { $total } { $total ->
    [one] Schnitt
   *[other] Schnitten
 } mit den bisher besten Einstellungen { $well ->
    [0] wurde keiner
    [one] wurde { $well }
   *[other] wurden { $well }
 } gut.
logbest-nothing = Nicht bekannt: Hier steht kein Schnitt mit Urteil, Vorschub und Drehzahl im Logbuch.
logbest-left-out = { $count ->
    [one] { $count } Eintrag wird nicht verglichen: Ihm fehlt Urteil, Vorschub oder Drehzahl.
   *[other] { $count } Einträge werden nicht verglichen: Ihnen fehlt Urteil, Vorschub oder Drehzahl.
 }
logbest-newest = Der neueste davon
logbest-well = Gut heißt sauber oder fast sauber. Ähnlich sind Spandicken, die um höchstens ein Viertel, Drehzahlen,
    die um höchstens die Hälfte, erste Durchgänge, die um höchstens ein Viertel des Fräserdurchmessers, und spätere,
    die um höchstens die Hälfte davon auseinanderliegen, die ersten auf derselben Seite einer aufwärts schneidenden
    Spitze; das Eintauchen zählt nicht.
logbest-failure = { $settings }: { $seen }
logbest-towards = { $axis ->
    [thicker] Dickerer Span, { $chip }
    [thinner] Dünnerer Span, { $chip }
    [deeper] Tieferer erster Durchgang, { $first }
    [shallower] Flacherer erster Durchgang, { $first }
    [deeper-then] Danach tiefere Durchgänge, { $then }
    [shallower-then] Danach flachere Durchgänge, { $then }
    [faster] Derselbe Span bei höherer Drehzahl, { $speed }
    [slower] Derselbe Span bei niedrigerer Drehzahl, { $speed }
   *[turned] Die andere Richtung
 }
logbest-tip-rule = Erster Durchgang tiefer als die aufwärts schneidende Spitze von { $tip }: Sonst reißt sie die
    Deckfläche hoch.
logbest-tip-seen = { $within-all ->
    [0] Tiefer wurden { $deeper } von { $deeper-all } gut; innerhalb der Spitze steht keiner im Logbuch.
   *[other] { $deeper-all ->
        [0] Innerhalb der Spitze wurden { $within } von { $within-all } gut; tiefer steht keiner im Logbuch.
       *[other] Tiefer wurden { $deeper } von { $deeper-all } gut, innerhalb der Spitze { $within } von { $within-all }.
     }
 }
logbest-diameter-rule = Nicht tiefer als ein Fräserdurchmesser, { $diameter }, bei voller Spandicke, bis ein Versuch mehr
    zeigt.
logbest-cure = { $axis ->
    [thicker] ein dickerer Span
    [thinner] ein dünnerer Span
    [deeper] ein tieferer erster Durchgang
    [shallower] ein flacherer erster Durchgang
    [deeper-then] tiefere Durchgänge nach dem ersten
    [shallower-then] flachere Durchgänge nach dem ersten
    [faster] eine höhere Drehzahl
    [slower] eine niedrigere Drehzahl
   *[turned] die andere Richtung
 }
logbest-next = { $why ->
    [begin] Fang im veröffentlichten Bereich an: In der Nähe ist nichts versucht.
    [elsewhere] Fang mit dem an, was auf einer ähnlichen Platte am besten ist.
    [repeat] { $times ->
        [one] Fräse noch einmal mit denselben Einstellungen: Wird es gut, sind sie bekannt.
       *[other] Fräse noch { $times }-mal mit denselben Einstellungen: Werden alle gut, sind sie bekannt.
     }
    [rival] { $times ->
        [one] Fräse noch einmal mit diesen, die sauber wurden: Dann ist bekannt, dass sie besser sind.
       *[other] Fräse noch { $times }-mal mit diesen, die sauber wurden, aber zu selten, um als besser bekannt zu sein.
     }
    [tip] Versuche einen ersten Durchgang tiefer als die aufwärts schneidende Spitze: Sonst reißt sie die Deckfläche hoch.
    [mark] Gegen { $mark } hilft vielleicht: { $cure }.
    [between] Halb so weit wie das, was misslang ({ $cure }): So zeigt sich, wo es anfängt zu misslingen.
    [further] Da war noch niemand: { $cure }.
    [turned] Nur eine Richtung ist versucht: Versuche die andere.
    [enough] In der Nähe würde nichts mehr zeigen. Trag Arbeiten ein, damit eine Änderung auffällt.
    [other] Alles in der Nähe ist versucht und wurde nicht gut: Versuche einen anderen Fräser.
   *[no-table] Für diese Platte und diesen Fräser ist keine Spandicke veröffentlicht. Trag zum Anfang einen Schnitt mit
        Vorschub, Drehzahl und Durchgängen ein.
 }
logbest-elsewhere = Auf einer ähnlichen Platte, { $sheet }: { $well } von { $total } wurden gut mit { $settings }.
logbest-head-best = Beste bekannte Einstellungen
logbest-head-so-far = Bisher die besten
logbest-head-failed = Was in ihrer Nähe misslang
logbest-head-next = Der nächste Versuch
logbest-head-tip = Erster Durchgang
logbest-head-elsewhere = Auf ähnlichen Platten
logbest-head-behind = Was dahinter steht
logbest-none-failed = In ihrer Nähe misslang noch nichts: Niemand weiß, wie weit sie sich treiben lassen.
logbest-answers = Was es antwortet
logbest-chart-chip = Kante über Spandicke
logbest-chart-first = Kante über erstem Durchgang
logbest-chart-fit = Passung über Spiel
logbest-chart-thick = Dicke nach Lieferung
logbest-chart-all = Schnitte, der neueste zuerst
logbest-chart-drawn = { $shown } von { $count }, die neuesten.
logbest-dots = { $dots ->
    [grades] Ein Punkt ist ein Schnitt: Scheibe sauber, Ring fast sauber, Dreieck zu schleifen, Kreuz auszubessern, Quadrat verdorben.
   *[other] Ein Punkt ist eine Messung.
 }
logbest-zone = Getönt ist, was den besten ähnlich ist.
logbest-scale-chip = { $unit } je Schneide
logbest-scale-first = { $unit } tief
logbest-scale-fit = { $unit } je Seite
logbest-scale-thick = { $unit }
logbest-line-tip = Spitze
logbest-went = { $feel ->
    [rattles] Klappert
    [by-hand] Von Hand
    [by-palm] Mit dem Handballen
    [by-mallet] Mit dem Klüpfel
   *[stuck] Sitzt fest
 }
logbest-col-day = Tag
logbest-col-grade = Ergebnis
logbest-col-fit = Spiel je Seite
logbest-col-went = Ging zusammen
logbest-col-batch = Lieferung
logbest-col-readings = Messungen
logbest-col-moisture = Feuchte
logbest-fits = Versuchte Passungen
logbest-batches = Gemessene Platten
logbest-described = { $count } Schnitte; { $counts }.
logbest-card = Einstellkarte
logbest-card-title = Einstellungen für { $sheet }
