# Last und Durchbiegung, Spannweite für Spannweite.
spans-title = Last und Durchbiegung
spans-mind = Achtung
spans-bounds = { $span }: Durchbiegung, je nachdem, wie es gehalten ist
spans-held = Gehalten
spans-first-day = Am ersten Tag
spans-after-years = Nach Jahren
spans-rests = Worauf diese Schätzungen beruhen
spans-estimate = Eine Schätzung aus angegebenen Werten, keine Zusage: probiere es vorsichtig, bevor du ihm traust, und steig auf nichts, was nicht dafür gemacht ist.
spans-not-reckoned = Schrauben, Bolzen, Leim und woran sie befestigt sind, sind nicht gerechnet; sie können lange vorher nachgeben. Auch Äste, Feuchte und grober Gebrauch ändern die Zahlen.
spans-codes-first = Örtliche Vorschriften und zugelassene Fachleute gehen vor.
spans-racking = Was nach unten gut trägt, kann sich doch seitwärts neigen: ein Rahmen aus zwei Seiten und einem Boden braucht einen Rücken, eine genügend hohe Zarge oder eine Strebe, die seine Ecken rechtwinklig hält.
spans-no-stiffness = seine Steifigkeit ist nicht bekannt
