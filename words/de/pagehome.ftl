# Wörter der Seiten: home.
pagehome-plans = Pläne
pagehome-newest = Die neueste Ausgabe zuerst.
pagehome-none = Noch ist kein Plan veröffentlicht.
pagehome-welcome = Willkommen
pagehome-new = Was neu ist
pagehome-correction = Korrektur
pagehome-by = Pläne von { $maker }.
pagehome-all = Alle Pläne von { $house }, die neueste Ausgabe zuerst.
pagehome-release = Ausgabe { $release }, { $day } · offen für alle
pagehome-release-closed = Ausgabe { $release }, { $day } · Dateien für Unterstützer
pagehome-missing = Hier ist keine Seite.
pagehome-missing-title = Keine solche Seite
pagehome-missing-about = Unter dieser Adresse ist keine Seite.
pagehome-missing-why = Die Adresse kann sich mit einer Ausgabe geändert haben, oder ein Buchstabe ging verloren. { $link } stehen auf einer Seite.
pagehome-missing-plans = Alle Pläne
pagehome-all-of = Alle { $count } Pläne
