# Die üblichen Hinweise zur Vorsicht.
cautions-opening = Maschinen, die Holz schneiden, können dich und andere in deiner Nähe verletzen.
    Was folgt, sind die üblichen Hinweise, keine Ausbildung. Gesetze und Vorschriften an deinem
    Wohnort, die Anleitungen deiner Maschinen und die Regeln des Fachs gehen immer vor.
cautions-eyes = Augen und Ohren
cautions-eyes-text = Trage Augen- und Gehörschutz, sobald eine Maschine läuft. Dem Gehör schadet die
    Summe der lauten Stunden: { $body } empfiehlt nicht mehr als { $level } dB(A) über acht Stunden
    und für je { $more } dB mehr die halbe Zeit; bei 100 dB(A) bleiben { $minutes } Minuten am Tag.
cautions-dust = Staub
cautions-dust-text = Holzstaub kann Asthma auslösen, Staub von Laubholz Krebs, vor allem der Nase
    (HSE). Sperrholz und Faserplatten enthalten oft Laubholz. Saug den Staub ab, wo er entsteht;
    eine Maske kommt dazu und ersetzt das nicht. Feg abgelagerten Staub nicht auf und blas ihn nicht
    weg. Feiner Staub kann brennen und explodieren.
cautions-holding = Festspannen
cautions-holding-text = Spann die Platte und jedes Stück, das aus ihr frei wird, so fest, dass sich
    nichts bewegen kann: Kleine Stücke brauchen Stege zur Platte oder eine Schicht, die sie hält.
    Führe eine Oberfräse so, dass der Fräser gegen dich zieht. Lass den Fräser auslaufen, bevor du
    hineingreifst. Keine weiten Ärmel.
cautions-fire = Feuer
cautions-fire-text = Lass eine laufende Maschine nie allein: Festsitzende Späne und ein blockierter
    Fräser können Feuer machen.
cautions-loads = Lasten
cautions-loads-text = Jede Last in diesem Plan ist eine Schätzung, deren Annahmen danebenstehen, nie
    eine zugesagte Tragkraft. Nichts hier wurde nach einer Möbelnorm geprüft. Für Spielzeug und
    Kindermöbel gelten eigene Normen; dieser Plan beansprucht keine.
cautions-wall = An der Wand befestigen
cautions-hung = Es gehört an die Wand: Gibt die Befestigung nach, kippt oder fällt es mit allem,
    was darauf ist. Befestige es so an der Wand, wie es zu dieser Wand passt. { $meeting }; suche die
    Ständer, auch Rohre und Leitungen, bevor du bohrst. Nicht daraufsteigen.
cautions-tall = Es ist hoch oder schmal und kann kippen, vor allem auf Teppich oder wenn ein Kind
    hinaufklettert. Befestige es so an der Wand, wie es zu dieser Wand passt. { $meeting }; suche
    die Ständer, auch Rohre und Leitungen, bevor du bohrst. Nicht daraufsteigen.
cautions-met = Seine Löcher treffen Ständer im Abstand von { $apart }
cautions-reached = Wo Ständer wie üblich im Abstand von { $apart } stehen, bohre die Löcher so weit
    auseinander, dass sie zwei treffen
cautions-on-board = Schraube „{ $board }“ an zwei Ständer, die üblicherweise im Abstand von
    { $apart } stehen, und das Stück daran
cautions-batten = Ständer stehen üblicherweise im Abstand von { $apart }, und es ist schmaler oder
    seine Breite ist nicht bekannt: Befestige eine Leiste quer über zwei davon und das Stück an der
    Leiste
cautions-spacings = { $one } oder { $other }
cautions-table = Auf einem Tisch
cautions-table-text = Es steht auf einem Tisch: Halte es von der Kante weg, und was schwer ist, tief
    und weit hinten. Es kann rutschen, und es kippt, wenn es oben oder auf einer Seite belastet
    wird. Stütz dich nicht darauf.
cautions-sitting = Sitzen
cautions-sitting-text = Sitz in der Mitte, mit allen Füßen auf ebenem Boden. Stell dich nicht
    darauf, kipple nicht auf zwei Füßen und sitz nicht auf der Kante: Dort kippt es.
cautions-standing = Dinge darauf abstellen
cautions-standing-text = Stell Dinge zwischen seinen Füßen ab, das Schwerste in der Mitte: Eine Last
    auf einer Kante außerhalb der Füße kann es kippen. Nicht daraufsteigen.
cautions-tipping = Umkippen
cautions-tipping-text = Was hoch oder schmal ist, kann kippen, vor allem auf Teppich. Halte, was
    schwer ist, unten. Nicht daraufsteigen.
cautions-title = Bevor du schneidest
cautions-own = Für diesen Plan
