# Wie eine CNC-Fräse die Teile schneidet.
router-title = Mit einer CNC-Fräse
router-order = In dieser Reihenfolge
router-order-measure = { $measuring } und nimm die Dateien, die für ihre Dicke sind.
router-order-square = Öffne eine Datei und miss ihre Prüfquadrate: { $unit ->
    [in] 4 in und 100 mm
   *[mm] 100 mm und 4 in
 }. Stimmen sie nicht, hat das Programm die Einheit falsch gelesen: Dann nicht schneiden.
router-order-coupon = Schneide zuerst die { $coupon }, aus derselben Platte.
router-order-setup = Richte nach dem Einrichtblatt ein: wo die Platte liegt und gespannt wird,
    welcher Fräser, in welcher Reihenfolge, wie tief, und auf welcher Seite jeder Linie.
router-measure = Miss deine Platte
router-coupon = Passprobe
router-files = Die Dateien
router-all = Jede Platte, jedes Teil
router-each = je { $formats }, im Ordner deiner Dicke in { $folder }
router-units = alle { $units }, was auch immer deine Maschine anzeigt
router-largest = Größtes Stück
router-setup = Einrichtblätter
router-engravings = Gravuren allein
router-centred = mittig, für fertige Stücke, in { $folder }
router-side = Welche Seite der Linie
router-cutter = Der Fräser
router-depth = Tiefe
router-layers = Die Ebenen der Schnittdateien
router-layers-order = Eine Ebene für jede Bearbeitung und Tiefe, in der Reihenfolge des Schneidens.
    Tiefen zählen von der Seite, die oben liegt: der Sichtseite.
router-layer = Ebene
router-layer-for = Wofür sie ist
