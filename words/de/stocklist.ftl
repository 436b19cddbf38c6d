# Das Lager als Listen: Köpfe, Abschnitte, Arten.
stocklist-measures = Misst
stocklist-at-least = Mindestens
stocklist-at-most = Höchstens
stocklist-plies = Lagen
stocklist-face-ply = Decklage
stocklist-density = Rohdichte
stocklist-stiffness-along = Steifigkeit längs
stocklist-stiffness-across = Steifigkeit quer
stocklist-strength-along = Festigkeit längs
stocklist-strength-across = Festigkeit quer
stocklist-shear-modulus-flat = Schubmodul, flach
stocklist-shear-modulus-on-edge = Schubmodul, hochkant
stocklist-shear-strength-flat = Schubfestigkeit, flach
stocklist-shear-strength-on-edge = Schubfestigkeit, hochkant
stocklist-pressure-on-a-face = Druck auf die Fläche
stocklist-creep = Kriechen
stocklist-moisture = Feuchte
stocklist-sold-as = Im Handel
stocklist-called = Heißt
stocklist-thickness = Dicke
stocklist-width = Breite
stocklist-stiffness = Steifigkeit
stocklist-strength = Festigkeit
stocklist-lengths = Längen
stocklist-diameter = Durchmesser
stocklist-edges = Schneiden
stocklist-cutting-length = Schneidenlänge
stocklist-up-cut-tip = Ziehende Spitze
stocklist-angle = Winkel
stocklist-tip-flat = Breite der Spitze
stocklist-true-cut = Schneidet in Wahrheit
stocklist-in-use-since = Im Einsatz seit
stocklist-sharpened = Geschärft
stocklist-metres-before = Gefräst vor dem Logbuch
stocklist-thread-or-shank = Gewinde oder Schaft
stocklist-head = Kopf
stocklist-clearance-hole = Durchgangsloch
stocklist-pilot-hole = Vorbohrung
stocklist-head-across = Kopf, Durchmesser
stocklist-across = Durchmesser
stocklist-thick = Dicke
stocklist-counterbore = Senkung
stocklist-its-depth = Ihre Tiefe
stocklist-length = Länge
stocklist-leg = Schenkel
stocklist-other-leg = Anderer Schenkel
stocklist-holes = Löcher, ab der Ecke
stocklist-opening = Spannt
stocklist-reach = Reicht
stocklist-mass = Masse
stocklist-in-inches = In Zoll
stocklist-height = Höhe
stocklist-cutter = Fräser
stocklist-least-a-tooth = Mindestens je Schneide
stocklist-most-a-tooth = Höchstens je Schneide
stocklist-at-a-depth-of = Bei einer Tiefe von
stocklist-depth = Tiefe
stocklist-chip-load-left = Bleibt von der Spandicke
stocklist-in-thickness = In der Dicke
stocklist-along-the-sheet-or-across-the-grain = Entlang der Platte, oder quer zur Faser
stocklist-sold-at = Verkauft mit
stocklist-takes-up-moisture = Nimmt Feuchte auf
stocklist-a-wet-coat = Eine nasse Schicht
stocklist-solids-by-volume = Feststoffe nach Volumen
stocklist-kind-sheets = Platten
stocklist-kind-boards = Leisten
stocklist-kind-cutters = Fräser
stocklist-kind-hardware = Beschläge
stocklist-kind-papers = Papiere
stocklist-kind-chip-loads = Spandicken
stocklist-kind-depth-rules = Schnitttiefe
stocklist-kind-movements = Quellen mit der Feuchte
stocklist-kind-finishes = Oberflächen
stocklist-unit-swelling = % je % Feuchte
stocklist-unit-moisture = % Feuchte
stocklist-unit-diameters = Durchmesser
stocklist-unit-full = der vollen
stocklist-unit-of-it = davon
stocklist-depth-rule = { $times } × Fräserdurchmesser
stocklist-word = { $word ->
    [mdf] MDF
    [osb] OSB
    [v] V-Fräser
    [up-cut] Ziehend
    [down-cut] Drückend
    [compression] Kompression
    [ball-nose] Kugelkopf
    [light-hobby] Leichte Hobbymaschinen
    [small-shop] Maschinen einer kleinen Werkstatt
    [industrial] Industriemaschinen
    [screw] Holzschrauben
    [insert] Gewindeeinsätze
    [bolt] Schrauben mit Gewinde
    [nut] Muttern
    [washer] Scheiben
    [lock-nut] Sicherungsmuttern
    [tee-nut] Einschlagmuttern
    [barrel-nut] Quermuttern
    [dowel] Dübel
    [connector] Verbinder
    [shelf-pin] Bodenträger
    [other] Anderes
    [hardwood-plywood] Laubholz-Sperrholz
    [softwood-plywood] Nadelholz-Sperrholz
    [particleboard] Spanplatte
    [hardboard] Hartfaser
    [hardwood] Laubholz
    [softwood] Nadelholz
    [laminate] Schichtstoff
   *[any] { $otherwise }
 }
