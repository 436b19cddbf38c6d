# Where z is zero, and what keeps depths true.
depthwords-zero = Bed under the sheet
depthwords-why = Zero z on the bed, not on the face: with it on the face, a spot { $unit ->
    [in] 1/64 in
   *[mm] 0.4 mm
 } thicker than the rest stays uncut.
depthwords-thickest = Give your program the thickest reading as the sheet’s thickness; depths count
    down from there.
depthwords-left = What is not cut through leaves a floor of { $floors }.
depthwords-engraved = Engrave by itself, with z zero on the face: a line so shallow must follow it.
depthwords-bed = Skim the bed flat first, and go below it no deeper than stated. A sheet that bows
    up is held down in the middle too, by screws in the waste or by vacuum: else its floors come out
    thin.
