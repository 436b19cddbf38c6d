# How parts are cut by hand, by paper templates.
hand-title = With drill, jigsaw and paper
hand-files = The file of your thickness in { $folder } has every part at full size, with its holes,
    slots and marks. { $measuring } first: slots and notches follow its thickness.
hand-files-measure = Measure your sheet
hand-order = In this order
hand-order-square = Print the first page alone, at 100 %, without any fitting to the page, and
    measure its check square in both directions: { $unit ->
    [in] 4 in, or 100 mm
   *[mm] 100 mm, or 4 in
 }. It says what to do when it is off.
hand-order-tiles = Print the rest, and lay the tiles together by the crosses; a map shows how they
    lie.
hand-order-test = Saw the test joint, the first in the file, from an offcut of the very sheet, until
    one piece goes into the other with the push of a hand.
hand-order-stick = Stick a template on; drill first, then saw.
hand-order-stick-or-mark = Stick a template on, or mark by the { $places }; drill first, then saw.
hand-order-saw = Saw beside the line, in the shaded waste, and finish to the line.
hand-places = list of holes and slots
hand-which = The files
hand-on = On { $paper }
hand-on-roll = On a copy shop’s roll, a page for each part in one piece
