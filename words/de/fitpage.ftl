# Was Skripte der Seiten sagen: keine Auswahl darin, nur Werte.
fitpage-too-old = Dieser Browser ist zu alt, um die Dateien auszupacken: öffne die Seite in einem von 2023 oder später, oder nimm einen fertigen Satz.
fitpage-not-fetched = Die Dateien ließen sich nicht holen. Von der Festplatte geöffnet, kann diese Seite sie nicht lesen: öffne start-here.html im Paket, darin stehen sie.
fitpage-say-cutter = Sag, wie breit der Fräser ist.
fitpage-cutters = Für { $sheet } werden Dateien für Fräser von { $least } bis { $most } gemacht.
fitpage-most = dickste
fitpage-mean = Mittel
fitpage-least = dünnste
fitpage-once = einmal
fitpage-take-set = Nimm den Satz { $folder }
fitpage-caption = { $sheet }: ein Zapfen in seinem Schlitz, maßstäblich; im Kreis zwölfmal so groß.
fitpage-caption-dashed = { $sheet }: ein Zapfen in seinem Schlitz, maßstäblich; im Kreis zwölfmal so groß. Gestrichelt: wo die Platte am dünnsten ist.
fitpage-made-for = Gemacht für { $thickness }
fitpage-as-drawn = Wie gezeichnet: { $thickness }
fitpage-left-out = Felder gibt es für { $fields } der { $count } Messwerte: { $texts } blieb weg.
fitpage-left-out-many = Felder gibt es für { $fields } der { $count } Messwerte: { $texts } blieben weg.
fitpage-saved = Gesichert: { $name }
