# Was Einrichtblätter von den Platten eines Legeplans sagen.
setup-caution-worn = Augen und Ohren geschützt, Staub abgesaugt, keine weiten Ärmel. Nichts Loses
    auf dem Tisch.
setup-caution-holding = Halte die Platte überall; keine Zwinge und keine Schraube im Weg des
    Fräsers. Fahre die ersten Linien über der Platte, eine Hand am Halt.
setup-caution-alone = Lass die Maschine nie allein. Lass den Fräser auslaufen, bevor du
    hineingreifst.
setup-defer = Die Einstellungen der Werkstatt auf ihrer Maschine, ein Anfang und nichts
    Zugesagtes. Die Anleitung deiner Maschine, die Grenzen des Fräserherstellers, örtliche
    Vorschriften und die Regeln des Fachs gehen vor.
setup-no-clamp = Keine Kante hat Platz: Halte die Platte mit Vakuum, Klebeband oder Schrauben im
    Abfall.
setup-compare = Dein Fräsprogramm sollte finden, entlang der gezeichneten Linien:
setup-no-settings = Der Plan nennt für diese Platte keine Schnitteinstellungen: Wähle eigene und
    probiere sie.
setup-zero-centre = Mitte der Platte
setup-zero-corner = Linke untere Ecke
setup-offset = Versatz { $offset }
setup-speed = { $rpm } U/min
setup-rates = { $rates } { $unit }
setup-feed = Vorschub { $rate }
setup-plunge = Eintauchen { $rate }
setup-passes-diameter = je Durchgang ein Fräserdurchmesser
setup-passes-one = ein Durchgang
setup-passes-to = Durchgänge bis { $depths }
setup-passes-through = Durchgänge bis { $depths }, dann durch
setup-side-on = auf der Linie
setup-side-inside = innen
setup-side-outside = außen
setup-passes = { $count ->
    [one] { $count } Durchgang
   *[other] { $count } Durchgänge
 }
setup-bridges = { $count ->
    [one] { $count } Steg, { $height } hoch
   *[other] { $count } Stege, { $height } hoch
 }
setup-through = durch
setup-depths-last = {" "}und{" "}
setup-left-engrave = Gravuren von { $where }, { $depth }: { $why }
setup-left-pocket = Vertiefungen von { $where }, { $depth }: { $why }
setup-left-opening = Öffnungen von { $where }, { $depth }: { $why }
setup-left-outline = Umrisse von { $where }, { $depth }: { $why }
setup-drill = { $count ->
    [one] Von Hand bohren: { $count } Loch { $wide }, { $depth }, in { $where }
   *[other] Von Hand bohren: { $count } Löcher { $wide }, { $depth }, in { $where }
 }
setup-tape = Kleb { $where } nieder oder lass eine dünne Haut: Darauf kann kein Steg stehen
setup-no-depth = keine Tiefe angegeben
setup-along-x = längs x: { $spots } { $unit }
setup-along-y = längs y: { $spots } { $unit }
setup-stretch = { $number } von { $least } bis { $most }
