# Last und Durchbiegung, Spannweite für Spannweite.
spans-title = Last und Durchbiegung
spans-mind = Achtung
spans-bounds = { $span }: Durchbiegung, je nachdem, wie es gehalten ist
spans-held = Gehalten
spans-first-day = Am ersten Tag
spans-after-years = Nach Jahren
spans-rests = Worauf diese Schätzungen beruhen
