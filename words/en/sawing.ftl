# Templates: what to know before sawing.
sawing-title = Before you saw
sawing-lines = The lines
sawing-line-edge = The line is the finished edge, and its shaded side is waste: outside it round the
  part, inside it in slots, notches and windows. Saw in the shade, beside the line, and file to it.
sawing-line-drill = Bore the small circles first, with the drill that stands below the part: they open
  the corners of tabs and slots.
sawing-line-hole = A cross is the middle of a hole. Beside it stand its drills, in the order to bore
  in, and how deep each goes. What is tinted is not cut through: its depth stands at it.
sawing-line-bars = Measure from the two edges with the heavy bars; the map of a part lists what lies
  where.
sawing-own = Your own sheet
sawing-offcut = A slot is drawn for the sheet named on page 1, with its play. For the very sheet you
  have, stand an offcut on its edge on the slot, one face on the line that is nearer to a bar, and
  mark along the other face: that is where the other line belongs. Saw within both, and file until
  the offcut goes in with the push of a hand. Notches are marked alike.
sawing-test-joint = Test joint
sawing-first = Saw the test joint first, twice, from an offcut of the very sheet and with the saw you
  will use: one must go into the other with the push of a hand. Too tight: take a hair more of the
  line; too loose: leave it standing. Saw it again until it goes, then saw the parts so.
sawing-by-hand = By hand?
