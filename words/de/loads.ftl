# Was die Spannweiten eines Plans tragen.
loads-heading = Schätzungen, keine zugesagte Tragkraft
loads-no-figure = Keine Zahl: { $why }.
loads-lifts = Es liegt nur auf, und diese Last auf dem, was übersteht, hebt das ferne Ende: Es kippt
    herunter.
loads-overloaded = Hier ist mehr verlangt, als diese Schätzung erlaubt.
loads-own-sag = Schon unter dem eigenen Gewicht biegt es sich um { $sag } durch, mehr als die Grenze
    von { $limit }.
loads-own-strength = Schon das eigene Gewicht bringt es an seine Festigkeit durch den
    Sicherheitsbeiwert.
loads-suits = Die Durchbiegung allein passte zu einer Grenze von Spannweite/{ $share }.
loads-tabs-first = Ohne Leim geben zuerst die Zapfen von { $part } nach.
loads-by-metre = { $unit ->
    [in] { $foot } je Fuß ({ $metre } je Meter)
   *[mm] { $metre } je Meter ({ $foot } je Fuß)
 }, im Ganzen { $whole }
loads-placed-even = { $load }, gleichmäßig verteilt auf { $carrier }
loads-placed-middle = { $load } in der Mitte von { $carrier }
loads-placed-end = { $load } am Ende von { $carrier }
loads-reach-shelf = { $length } von Stütze zu Stütze
loads-reach-rail = { $length } von Stütze zu Stütze
loads-reach-overhang = { $length } Überstand
loads-reach-leg = { $length } lang
loads-asked-alone = { $load }.
loads-asked-leg = { $load } senkrecht auf { $carrier }, { $reach }.
loads-asked-stays = { $load }, { $reach }; die Last bleibt.
loads-asked-goes = { $load }, { $reach }; die Last kommt und geht.
loads-under-edge = Hochkant darunter: { $count } × { $part }, { $joined ->
    [glued] damit verleimt
   *[loose] nicht damit verleimt
 }.
loads-under-flat = Flach darunter: { $count } × { $part }, { $joined ->
    [glued] damit verleimt
   *[loose] nicht damit verleimt
 }.
loads-first-day = Durchbiegung am ersten Tag
loads-after-years = Durchbiegung nach Jahren
loads-limit = Grenze
loads-lifting = Das ferne Ende hebt sich mit, am Ende
loads-lifting-even = { $load }, verteilt über den Überstand von { $reach }
loads-lifting-why = es liegt nur auf, allein vom eigenen Gewicht gehalten; keine Grenze der
    Durchbiegung ändert das
loads-no-lift = Es hebt sich nicht
loads-held = { $held ->
    [clamped] von Zwingen niedergehalten
    [screwed] von Schrauben niedergehalten
   *[brackets] von Winkeln niedergehalten
 }
loads-held-bears = { $held ->
    [clamped] die Zwingen tragen, was es heben würde; wie viel sie tragen, ist nicht berechnet
    [screwed] die Schrauben tragen, was es heben würde; wie viel sie tragen, ist nicht berechnet
   *[brackets] die Winkel tragen, was es heben würde; wie viel sie tragen, ist nicht berechnet
 }
loads-not-known = nicht bekannt
loads-no-creep = kein Kriechen angegeben
loads-were-clamped = { $sag }, wäre es eingespannt
loads-were-clamped-glued = { $sag }, wäre es eingespannt und verleimt
loads-by-sag = Durchbiegung an ihrer Grenze: { $load }
loads-by-lifting = Abheben: { $load }
loads-strength-unknown = Festigkeit: nicht bekannt
loads-by-strength = Festigkeit durch einen Sicherheitsbeiwert von { $factor }: { $load }, { $where }
loads-spot-middle = in der Mitte von { $part }
loads-spot-support = in { $part }, an einer Stütze
loads-spot-away = in { $part }, { $away } von einer Stütze
loads-tabs = { $tabs ->
    [one] { $tabs } Zapfen von { $part } an einem Ende
   *[other] { $tabs } Zapfen von { $part } an einem Ende
 }
loads-tabs-unknown = { $tabs }: Festigkeit nicht bekannt
loads-tabs-shear = { $tabs }, ohne Leim (Abscheren): { $load }
loads-tabs-pressure = { $tabs }, ohne Leim (Druck): { $load }
loads-each-over = jede durch einen Sicherheitsbeiwert von { $factor }
loads-least = die kleinste davon
loads-swaying = Knickt, frei schwankend, bei
loads-swaying-why = das obere Ende ist frei, wie in einem Rahmen ohne Strebe
loads-held-ends = Knickt, gehalten, bei
loads-held-ends-why = kein Ende kann seitlich ausweichen
loads-crushed = Wird zerdrückt bei
loads-greatest = Größte Last, geschätzt
loads-ends-free = Enden frei drehbar{ $joined ->
    [loose] , nicht verleimt
    [glued] , verleimt
    [stated] , verleimt, wo der Plan es sagt
   *[none] {""}
 }
loads-ends-clamped = Enden eingespannt{ $joined ->
    [loose] , nicht verleimt
    [glued] , verleimt
    [stated] , verleimt, wo der Plan es sagt
   *[none] {""}
 }
loads-ends-one = An einem Ende eingespannt{ $joined ->
    [loose] , nicht verleimt
    [glued] , verleimt
    [stated] , verleimt, wo der Plan es sagt
   *[none] {""}
 }
