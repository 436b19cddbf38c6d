# Bilder: Beschriftungen, Titel und was sie zeigen, in Worten.
drawing-lines = Die schattierte Kante einer Schablone, ihr Schlitz mit gebohrten Ecken, eine Bohrung
  und zwei Balken
drawing-offcut = Ein Reststück steht hochkant, eine Fläche an der Linie eines Schlitzes; an der anderen
  ein Riss
drawing-an-offcut = Reststück
drawing-a-mark = Riss
drawing-a-line = Linie
drawing-grain = Faser
drawing-sheet = { $plan }: Platte { $sheet }
drawing-sheet-shows = Eine Platte von { $wide } mal { $high } mit den Stücken { $pieces }.
drawing-too-small = Zu klein für ein Zeichen: { $pieces }
drawing-too-short = Zu kurz für eine Nummer: { $count ->
    [one] Schnitt { $cuts }
   *[other] Schnitte { $cuts }
 }.
drawing-too-narrow = Zu schmal für ein Zeichen: { $pieces }
drawing-too-narrow-many = Zu schmal für ein Zeichen: { $count ->
    [one] { $count } Stück
   *[other] { $count } Stück
 }, siehe die Liste
drawing-pieces = { $count ->
    [one] { $count } Stück
   *[other] { $count } Stück
 }
drawing-measuring = Wo gemessen wird
drawing-measuring-shows = Eine Platte mit acht Punkten: nahe den Ecken und in der Mitte jeder Seite.
drawing-art = { $plan }: { $art } auf { $part }
drawing-art-shows = Die Mitte der Gravur liegt { $one } und { $other } von den markierten Kanten.
drawing-art-check = { $length }, wenn dies in voller Größe gedruckt ist
drawing-art-full = { $plan }: { $art } in voller Größe
drawing-art-full-shows = Die Gravur in voller Größe, { $wide } breit und { $high } hoch, mit einem
  Fadenkreuz durch ihre Mitte.
drawing-together = Zusammengebaut
drawing-together-shows = Zusammengebaut ist es { $wide } breit, { $deep } tief und { $high } hoch.
drawing-apart = Alle Stücke auseinandergezogen
drawing-apart-shows = Die Stücke { $pieces }, auseinandergezogen.
drawing-plan-together = { $plan }: zusammengebaut, mit den Maßen über alles
drawing-plan-apart = { $plan }: die Stücke auseinandergezogen
drawing-plan-set = { $plan }: der ganze Satz, mit den Maßen über alles
drawing-plan-step = { $plan }, Schritt { $step }
drawing-step = Schritt { $step }
drawing-step-set-down = Neu: { $count ->
    [one] Stück
   *[other] Stücke
 } { $pieces } abgestellt{ $below ->
    [0] {""}
   *[other] , von unten gesehen
 }.
drawing-step-moving = Neu: { $count ->
    [one] Stück
   *[other] Stücke
 } { $pieces }, { $way } bewegt{ $standing ->
    [0] {""}
   *[other] {" "}zu den { $standing }, die stehen
 }{ $below ->
    [0] {""}
   *[other] , von unten gesehen
 }.
drawing-step-hardware = Beschläge, aus ihren Plätzen gezogen, an { $standing ->
    [one] dem Stück, das steht
   *[other] den { $standing } Stücken, die stehen
 }.
drawing-bore = ø { $wide }, { $deep } tief
drawing-bores-show = { $pieces }, vor jeder Bohrung ein Bohrer mit Anschlag: { $bores }.
drawing-step-boards = Neu aus Leisten und Brettern: { $boards }.
drawing-wall-behind = Dahinter ist die Wand.
drawing-step-lying = { $piece } liegt auf einer Matte.
drawing-step-alike = { $count } gleiche, bei jedem ebenso.
drawing-step-turn = Nummer { $turn }: { $pieces }.
drawing-step-held = Jemand hält { $pieces }.
drawing-step-apart = { $one } und { $other } stehen { $far } auseinander, von Mitte zu Mitte.
drawing-step-overhang = { $piece } reicht { $far } über das hinaus, worauf es liegt, { $side ->
    [left] links
   *[right] rechts
 }.
drawing-step-height = Die Oberkante von { $board } ist { $far } über dem Boden.
drawing-larger-joint = Größer gezeichnet{ $way ->
    [below] , von unten gesehen
    [above] , von oben gesehen
    [behind] , von hinten gesehen
    [left] , von links gesehen
    [right] , von rechts gesehen
   *[plain] {""}
 }: wie { $one } und { $other } ineinandergreifen{ $count ->
    [one] {""}
   *[other] , so an { $count } Stellen
 }.
drawing-larger-fastening = Größer gezeichnet: { $item } vor dem Einsetzen.
drawing-larger-nut = Größer gezeichnet: { $item } vor der Bohrung, der Schlitz in Richtung der Schraube.
drawing-way-left = nach links
drawing-way-right = nach rechts
drawing-way-to-front = nach vorn
drawing-way-to-back = nach hinten
drawing-way-down = nach unten
drawing-way-up = nach oben
drawing-seen-from-below = Von unten gesehen
drawing-turn-over = Umdrehen
drawing-turn-side = Auf die Seite legen
drawing-turn-up = Aufstellen
drawing-turn-round = Herumdrehen
drawing-step-turned = Was steht, lag vorher anders; ein Pfeil zeigt, wie es gedreht wird.
drawing-glue = Leim
drawing-glue-shows = { $pieces }, auseinandergelegt, die Flächen mit Leim schraffiert.
drawing-marks-show = { $pieces }, was anzureißen ist, mit den Abständen von den Seiten.
drawing-sand = { $grit ->
    [0] Schleifen
   *[other] Schleifen, Körnung { $grit }
 }
drawing-sand-shows = { $pieces }, was geschliffen wird, ist schraffiert; darauf ein Schleifklotz.
drawing-clamp = { $count ->
    [one] Zwinge
   *[other] Zwingen
 }
drawing-clamped-for = { $time } lassen
drawing-clamps-show = { $count ->
    [one] Eine Zwinge presst
   *[other] { $count } Zwingen pressen
 } { $pieces } zusammen.
drawing-seen-from-above = Von oben gesehen
drawing-seen-from-behind = Von hinten gesehen
drawing-seen-from-left = Von links gesehen
drawing-seen-from-right = Von rechts gesehen
drawing-hardware = Beschläge in wahrer Größe
drawing-hardware-shows = In wahrer Größe, von der Seite und auf den Kopf gesehen: { $pieces }.
drawing-in-x = in x
drawing-in-y = in y
drawing-coupon = { $plan }: Passprobe für { $sheet }
drawing-coupon-step = Stufe { $step }, { $wide } breit, ist für Platten von { $thick }
drawing-coupon-shows = Ein Winkel mit zwei Schlitzen, die in Stufen weiter werden, einer quer zu jeder
  Richtung, und ein Zapfen mit zwei gestuften Armen zum Probieren im langen Schlitz: { $slots }.
drawing-part = { $plan }: Teil { $mark }, { $part }
drawing-part-shows = { $wide } breit, { $high } hoch, von der Sichtseite gesehen.
drawing-grain-along-x = Faser entlang x.
drawing-grain-along-y = Faser entlang y.
drawing-faces-both = beide Flächen
drawing-faces-show = nur die Sichtseite
drawing-faces-back = nur die Rückseite
drawing-rounded = gerundet { $radius }, { $faces }
drawing-banded = mit Umleimer: { $band }; Maße sind ohne ihn
drawing-edge-square = scharfkantig gelassen, wie geschnitten
drawing-edge-ease = gebrochen: feines Papier nimmt die Schärfe
drawing-edge-mask = abgeklebt: scharfkantig gelassen, ohne Oberfläche
drawing-machine-sheet = { $plan }: Platte { $sheet } auf der Maschine
drawing-machine-coupon = { $plan }: Passprobe auf der Maschine
drawing-machine-shows = Eine Platte von { $wide } mal { $high }; 0,0 ist { $zero }; { $clamps }.
drawing-scrap-shows = Ein Reststück von { $wide } mal { $high }; 0,0 ist die untere linke Ecke des
  Winkels.
drawing-zero-middle = die Mitte
drawing-zero-corner = die untere linke Ecke
drawing-clamps = { $spots ->
    [0] keine Kante hat Platz für ein Spannmittel
    [one] eine Stelle zum Spannen ist schraffiert
   *[other] { $spots } Stellen zum Spannen sind schraffiert
 }
drawing-operation-engrave = Gravuren
drawing-operation-pocket = Vertiefungen
drawing-operation-hole = Löcher
drawing-operation-opening = Öffnungen
drawing-operation-outline = Umrisse
drawing-bridges = Stege
drawing-saw = { $plan }: Sägeplan { $sheet }
drawing-saw-shows = Eine Platte von { $wide } mal { $high }, { $turned ->
    [0] zuerst längs
   *[other] zuerst quer
 } geteilt: { $cuts } Schnitte mit { $settings } Einstellungen des Anschlags. Sie ergibt die Rohlinge
  { $blanks }.
drawing-left-over = Rest
drawing-left-over-size = Rest { $size }
drawing-boards = { $title }: { $count ->
    [one] { $count } Brett
   *[other] { $count } Bretter
 }
drawing-board-shows = Brett { $board }, { $length }: { $pieces }
drawing-board = { $count ->
    [1] Brett { $first }
    [2] Bretter { $first } und { $last }, gleich geschnitten
   *[other] Bretter { $first } bis { $last }, gleich geschnitten
 }
drawing-yard = { $plan }: Platte { $sheet } beim Zuschnitt
drawing-yard-shows = Eine Platte mit { $cuts } geraden Schnitten zwischen ihren Stücken.
drawing-change = { $part }: früher und jetzt
drawing-change-shows = Der ältere Umriss, gestrichelt, über dem neueren. { $count ->
    [0] Nichts, was andere Stücke trifft, liegt woanders.
    [one] Eine Stelle, die andere Stücke trifft, liegt woanders.
   *[other] { $count } Stellen, die andere Stücke treffen, liegen woanders.
 }
