# The stock as lists: heads, sections, kinds.
stocklist-measures = Measures
stocklist-at-least = At least
stocklist-at-most = At most
stocklist-plies = Plies
stocklist-face-ply = Face ply
stocklist-density = Density
stocklist-stiffness-along = Stiffness along
stocklist-stiffness-across = Stiffness across
stocklist-strength-along = Strength along
stocklist-strength-across = Strength across
stocklist-shear-modulus-flat = Shear modulus, flat
stocklist-shear-modulus-on-edge = Shear modulus, on edge
stocklist-shear-strength-flat = Shear strength, flat
stocklist-shear-strength-on-edge = Shear strength, on edge
stocklist-pressure-on-a-face = Pressure on a face
stocklist-creep = Creep
stocklist-moisture = Moisture
stocklist-sold-as = Sold as
stocklist-called = Called
stocklist-thickness = Thickness
stocklist-width = Width
stocklist-stiffness = Stiffness
stocklist-strength = Strength
stocklist-lengths = Lengths
stocklist-diameter = Diameter
stocklist-edges = Edges
stocklist-cutting-length = Cutting length
stocklist-up-cut-tip = Up-cut tip
stocklist-angle = Angle
stocklist-tip-flat = Flat of the tip
stocklist-true-cut = Really cuts
stocklist-in-use-since = In use since
stocklist-sharpened = Sharpened
stocklist-metres-before = Cut before the log
stocklist-thread-or-shank = Thread or shank
stocklist-head = Head
stocklist-clearance-hole = Clearance hole
stocklist-pilot-hole = Pilot hole
stocklist-head-across = Head, across
stocklist-across = Across
stocklist-thick = Thick
stocklist-counterbore = Counterbore
stocklist-its-depth = Its depth
stocklist-length = Length
stocklist-leg = Leg
stocklist-other-leg = Other leg
stocklist-holes = Holes, from the corner
stocklist-opening = Opens
stocklist-reach = Reaches
stocklist-mass = Mass
stocklist-in-inches = In inches
stocklist-height = Height
stocklist-cutter = Cutter
stocklist-least-a-tooth = Least a tooth
stocklist-most-a-tooth = Most a tooth
stocklist-at-a-depth-of = At a depth of
stocklist-depth = Depth
stocklist-chip-load-left = Chip load left
stocklist-in-thickness = In thickness
stocklist-along-the-sheet-or-across-the-grain = Along the sheet, or across the grain
stocklist-sold-at = Sold at
stocklist-takes-up-moisture = Takes up moisture
stocklist-a-wet-coat = A wet coat
stocklist-solids-by-volume = Solids by volume
stocklist-kind-sheets = Sheets
stocklist-kind-boards = Boards
stocklist-kind-cutters = Cutters
stocklist-kind-hardware = Hardware
stocklist-kind-papers = Papers
stocklist-kind-chip-loads = Chip loads
stocklist-kind-depth-rules = Depth of cut
stocklist-kind-movements = Swelling with moisture
stocklist-kind-finishes = Finishes
stocklist-unit-swelling = % for each % of moisture
stocklist-unit-moisture = % moisture
stocklist-unit-diameters = diameters
stocklist-unit-full = of the full one
stocklist-unit-of-it = of it
stocklist-depth-rule = { $times } × the cutter’s diameter
stocklist-word = { $word ->
    [mdf] MDF
    [osb] OSB
    [v] V cutters
    [up-cut] Up-cut
    [down-cut] Down-cut
    [compression] Compression
    [ball-nose] Ball nose
    [light-hobby] Light hobby machines
    [small-shop] Machines of a small shop
    [industrial] Industrial machines
    [screw] Wood screws
    [insert] Threaded inserts
    [bolt] Bolts
    [nut] Nuts
    [washer] Washers
    [lock-nut] Lock nuts
    [tee-nut] Tee nuts
    [barrel-nut] Barrel nuts
    [dowel] Dowels
    [connector] Connectors
    [shelf-pin] Shelf pins
    [other] Other
    [hardwood-plywood] Hardwood plywood
    [softwood-plywood] Softwood plywood
    [particleboard] Particleboard
    [hardboard] Hardboard
    [hardwood] Hardwood
    [softwood] Softwood
    [laminate] Laminate
   *[any] { $otherwise }
 }
