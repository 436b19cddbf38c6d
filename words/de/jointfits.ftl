# Welche Verbindungen eigenes Spiel haben und wie viel.
jointfits-head-joints = Verbindungen
jointfits-head-for = Für
jointfits-head-side = Je Seite
jointfits-head-added = Anstrich und Feuchte
jointfits-head-ends = An den Enden
jointfits-some = Manche Verbindungen haben eigenes Spiel auf jeder Seite dessen, was hineingeht: je
    nachdem, wofür sie sind, wie lang sie sind und wie viele zusammen hineingehen.
jointfits-all = Jede Verbindung hat dieses Spiel auf jeder Seite dessen, was hineingeht, roh und
    trocken: ihre Passung, je nachdem, wofür sie ist, wie lang sie ist und wie viele zusammen
    hineingehen, und was Anstrich und Feuchte davon wollen.
jointfits-chosen = Es folgt der Passung, die du wählst, außer bei Längen, die die Werkstatt angibt.
jointfits-for-knock-down = zerlegbar
jointfits-for-glued = geleimt
jointfits-for-press = eingepresst
jointfits-for-drop-in = eingelegt
jointfits-called-into = { $one } in { $other }
jointfits-called-with = { $one } mit { $other }
jointfits-called-on = { $one } auf { $other }
jointfits-called-through = { $one } durch { $other }
