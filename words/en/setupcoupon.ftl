# A fit coupon on the machine.
setupcoupon-title = Fit coupon, { $sheet }
setupcoupon-plate = plate
setupcoupon-tab = tab
setupcoupon-scrap-plain = Take a scrap of { $size }, from the very sheet that you will cut, show
    face up.
setupcoupon-scrap-grained = Take a scrap of { $size }, with its grain along x, from the very sheet
    that you will cut, show face up.
setupcoupon-tape = Tape it down all over, below plate and tab: nothing else holds the small pieces.
setupcoupon-cutter = Fit the cutter that you will cut the plan with, and type its name’s diameter:
    correct nothing yet.
setupcoupon-zero = Zero x and y where the plate’s lower left corner is to be, z on the bed under the
    scrap.
setupcoupon-cut = Cut it, free both pieces, brush off burrs, and read it as “Cut this first” says.
