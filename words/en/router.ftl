# How a CNC router cuts the parts.
router-title = With a CNC router
router-order = In this order
router-order-measure = { $measuring }, and take the files that are for its thickness.
router-order-square = Open a file and measure its check squares: { $unit ->
    [in] 4 in and 100 mm
   *[mm] 100 mm and 4 in
 }. If they are off, the program has taken the unit wrongly: do not cut.
router-order-coupon = Cut the { $coupon } first, from the very sheet.
router-order-setup = Set up by the setup sheet: where the sheet lies and is clamped, which cutter, in
    which order, how deep, and on which side of each line.
router-measure = Measure your sheet
router-coupon = coupon
router-files = The files
router-all = Every sheet, every part
router-each = { $formats } for each, in the folder of your thickness in { $folder }
router-units = all are { $units }, whatever your machine shows
router-largest = Largest piece
router-setup = Setup sheets
router-engravings = Engravings alone
router-centred = centred, for finished pieces, in { $folder }
router-side = Which side of the line
router-cutter = The cutter
router-depth = Depth
router-layers = The layers of the cut files
router-layers-order = One layer for each operation and depth, in the order of cutting. Depths are
    from the face that lies up, which is the show face.
router-layer = Layer
router-layer-for = What it is for
