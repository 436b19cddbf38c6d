# Wie lange es dauert, die Platten eines Plans zu fräsen.
cutting-machine = auf der CNC-Fräse einer kleinen Werkstatt
cutting-wear = { $ways } sind über alle Durchgänge gezählt. Auch Tiefe, Leim und Staub machen
    einen Fräser stumpf: Vergleiche nur Gleiches mit Gleichem.
cutting-setting-through = { $sheet }, durch
cutting-setting-deep = { $sheet }, bis zu einer Tiefe
cutting-sheets = { $sheets ->
    [one] { $sheets } Platte
   *[other] { $sheets } Platten
 }
cutting-some-sheets = { $sheets ->
    [one] { $known } von { $sheets } Platte
   *[other] { $known } von { $sheets } Platten
 }
cutting-remark = Berechnet für die CNC-Fräse einer kleinen Werkstatt mit den Einstellungen dieser
    Werkstatt; die { $ways } sind die aller Durchgänge. Auflegen, Festspannen und
    Wenden der Platte und das Saubermachen sind nicht dabei.
cutting-left = Auch nicht dabei: { $uncut }.
cutting-uncut = { $operation ->
    [engrave] Gravuren von { $part } ({ $why })
    [pocket] Vertiefungen von { $part } ({ $why })
    [hole] Löcher von { $part } ({ $why })
    [opening] Öffnungen von { $part } ({ $why })
   *[outline] Umrisse von { $part } ({ $why })
 }
cutting-title = Schnittzeit
cutting-rests = Worauf die Zeit beruht
cutting-by-sheet = Schnittzeit, Platte für Platte
cutting-sheet = Platte
cutting-time = Zeit
cutting-unknown = dafür sind keine Schnittwerte angegeben
cutting-in-all = Alles zusammen
cutting-in-some = Alles zusammen, { $known }
cutting-by-cutter = Was jeder Fräser im Holz tut
cutting-cutter = Fräser
cutting-cuts = Schnitte
cutting-besides = Wege über der Platte und Fräserwechsel
cutting-too-narrow = zu schmal für die angegebenen Fräser
cutting-no-setting = keine Einstellung dafür angegeben
