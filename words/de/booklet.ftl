# Was das Bauheft von sich sagt, und die Wörter seiner Seiten.
booklet-title = { $title }: Bauheft
booklet-subject = Bauheft zu { $title }, Ausgabe { $version }
booklet-foot = { $title } · Ausgabe { $version }
booklet-notices = Bitte beachten
booklet-caution = Vorsicht
booklet-by-hand = Ohne CNC-Fräse
booklet-page = Seite { $page } von { $pages }
booklet-led = { $words } (Seite { $page })
