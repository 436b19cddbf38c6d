# Wie Teile von Hand geschnitten werden, nach Papierschablonen.
hand-title = Mit Bohrmaschine, Stichsäge und Papier
hand-files = Die Datei für deine Dicke in { $folder } zeigt jedes Teil in voller Größe, mit seinen
    Löchern, Schlitzen und Zeichen. { $measuring }: Schlitze und Ausklinkungen richten sich nach
    ihrer Dicke.
hand-files-measure = Miss zuerst deine Platte
hand-order = In dieser Reihenfolge
hand-order-square = Druck die erste Seite allein, auf 100 %, ohne Anpassung an die Seite, und miss
    ihr Prüfquadrat in beiden Richtungen: { $unit ->
    [in] 4 in oder 100 mm
   *[mm] 100 mm oder 4 in
 }. Dort steht, was zu tun ist, wenn es nicht stimmt.
hand-order-tiles = Druck den Rest und leg die Blätter an den Kreuzen aneinander; ein Plan zeigt, wie
    sie liegen.
hand-order-test = Säg die Probeverbindung, die erste in der Datei, aus einem Reststück derselben
    Platte, bis ein Stück mit dem Druck der Hand ins andere geht.
hand-order-stick = Kleb eine Schablone auf; bohr zuerst, dann säg.
hand-order-stick-or-mark = Kleb eine Schablone auf oder reiß nach der { $places } an; bohr zuerst,
    dann säg.
hand-order-saw = Säg neben der Linie, im schattierten Abfall, und arbeite bis zur Linie nach.
hand-places = Liste der Löcher und Schlitze
hand-which = Die Dateien
hand-on = Auf { $paper }
hand-on-roll = Auf der Rolle eines Copyshops, eine Seite für jedes Teil in einem Stück
