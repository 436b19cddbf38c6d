# What scripts of pages say: no choices in it, values alone.
truecut-long-slot = the long slot, drawn { $drawn }
truecut-last-step = the last step of the arm, drawn { $drawn }
truecut-step = Write the number of a step, 1 to { $count }.
truecut-takes-away = what it takes away
truecut-really-cuts = what a cutter of { $cutter } really cuts
truecut-look = Look at the collet, at the cutter itself and at the unit, and cut the coupon anew.
truecut-longer = Lengths come out longer in { $axis }: draw a line of 500 mm or more along each axis, measure both, and set the steps per millimetre of the one that is off to what they are times told over measured; look for a belt that slips.
truecut-play-axis = Look for play in one of the axes: a loose belt, nut, pinion or rail.
truecut-differs = What it cuts differs by { $by } between x and y. No cutter does that, so it is the machine’s, and no file mends it. { $why }
truecut-inside-outside = Inside and outside differ by { $by }: a drive has play, the cutter bends, or pieces move. Look at belts and nuts, hold the sheet down, and leave a few tenths for a last pass all round.
truecut-built-cutter = The cutter of { $cutter } cuts { $cut }. That is built into these files: tell your toolpath program a cutter of { $cutter }, and correct nothing else.
truecut-built-kerf = It takes away { $cut }. That is built into these files: tell your toolpath program no kerf, and correct nothing else.
truecut-told-cutter = The cutter of { $cutter } cuts { $cut }. Tell your toolpath program a cutter of { $cut }, and correct nothing else: these files have nothing built in.
truecut-told-kerf = It takes away { $cut }. Tell your toolpath program a kerf of { $cut }, and correct nothing else: these files have nothing built in.
