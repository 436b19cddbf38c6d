# Eine Gravur, die auf ein fertiges Stück kommt.
setupart-title = { $art } auf { $mark }, { $part }
setupart-size = { $wide } breit, { $high } hoch
setupart-strokes = { $size }, Striche { $stroke } breit
setupart-strokes-uneven = { $size }, Striche { $stroke } breit; wo die Platte { $off } tiefer oder
    höher liegt, { $narrow } bis { $most }
setupart-mark-straight = Zeichne die Mitte der Gravur auf dem Stück an: { $one } und { $other } von
    den dick gezeichneten Kanten, rechtwinklig zu ihnen.
setupart-mark-curved = Zeichne die Mitte der Gravur auf dem Stück an: { $one } und { $other } von
    Linealen, die an den dick gezeichneten Seiten anliegen.
setupart-fix = Spann das Stück fest, wie es gezeichnet ist, x nach rechts, die Seite der Gravur nach
    oben. Prüf beide Abstände noch einmal.
setupart-zero = Setz x und y null über dem Riss, z auf der Fläche.
setupart-run = Fahre die Datei der Gravur allein: Ihr 0,0 ist die Mitte der Gravur.
