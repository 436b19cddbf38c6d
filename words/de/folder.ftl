# Welche Schnittdateien zu einer Platte von irgendeiner Dicke passen.
folder-thinner = keine: dünner, als der Plan herausgegeben ist
folder-thicker = keine: dicker, als der Plan herausgegeben ist
folder-made = Dateien, gemacht für { $thickness }
folder-none-ready = keine liegt fertig vor
folder-next-thicker = die nächstdickere
folder-a-folder = ein Ordner für { $sheet }
folder-measuring = { $sheet }, gemessen { $thickness }
folder-goes-with = Gehört zu sheet-{ $number } der Schnittdateien für { $sheets } und keine andere
    Dicke.
folder-goes-with-chosen = Gehört zu sheet-{ $number } der Schnittdateien allein für { $sheets }. Misst
    deine Platte etwas anderes, nimm diese Seite und jene Datei für ihre eigene Dicke.
folder-file = { $file } ist für { $sheets }, und für keine andere Dicke.
folder-file-of-several = { $file } ist allein für { $sheets }. Misst deine Platte etwas anderes,
    nimm sheet-{ $number } der Dateien für ihre Dicke.
folder-sizes = Diese Maße gelten für { $sheets }, und für keine andere Dicke.
folder-sizes-of-several = Diese Maße gelten allein für { $sheets }. Misst deine Platte etwas
    anderes, vergleiche jedes Stück mit seiner Schablone für diese Dicke.
