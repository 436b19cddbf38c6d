# The yard card: what to ask for, and where the yard's saw makes it small enough.
yard-sawn = Have the saw’s cut lie half to each side of the place told; between it and every piece
    there is room for a saw of { $saw }. Mark each blank with its number and its lower left corner:
    on the machine, 0,0 of the sheet’s file lies as far left of that corner and below it as is told.
yard-grade = grade { $grade }
yard-plies = { $count } plies
yard-thick = from { $range } thick
yard-each = { $weight } each
yard-long = { $length } long
yard-limits = Blanks are to be no larger than { $size } and no heavier than { $mass }, for a car and
    one person.
yard-limits-bed = Blanks are to be no larger than { $size } and no heavier than { $mass }, for a car
    and one person; where that can be had, no larger than the bed of { $bed }.
yard-sheet = Sheet { $number }: { $sheet }, { $size }
yard-no-cut = It needs no cut: it can be taken as it is.
yard-straight-cuts = { $count ->
    [one] { $count } straight cut
   *[other] { $count } straight cuts
 }
yard-cuts = { $blanks ->
    [one] { $cuts }, through no piece: { $blanks } blank.
   *[other] { $cuts }, through no piece: { $blanks } blanks.
 }
yard-left = What is left over: { $blanks }.
yard-off-bed = { $count ->
    [1] Blank { $blanks } is still larger than the bed: no straight cut passes between the pieces.
   *[other] Blanks { $blanks } are still larger than the bed: no straight cut passes between the
    pieces.
 }
yard-whole-large = { $count ->
    [1] It must come whole: { $pieces } would be too large by itself.
   *[other] It must come whole: { $pieces } would be too large by themselves.
 }
yard-whole-crossed = It must come whole: { $cuts } straight cuts from edge to edge do not make it
    small enough without crossing a piece.
yard-left-of = left of cut { $number }
yard-right-of = right of cut { $number }
yard-below-of = below cut { $number }
yard-above-of = above cut { $number }
yard-cut-within = What lies { $where }: { $cut }
yard-cut-across = { $at } from its left edge, straight across
yard-cut-along = { $at } from its lower edge, straight along
yard-corner-right = { $far } right
yard-corner-up = { $far } up
yard-corner-own = the sheet’s own
