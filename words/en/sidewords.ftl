# On which side of a drawn line the cutter runs.
sidewords-finished = The finished edge
sidewords-on = { $what } on them
sidewords-inside = { $what } inside them
sidewords-outside = { $what } outside them
sidewords-for = { $offset } for { $cutter }
sidewords-lines = Lines are the finished edge: { $sides }, by half the cutter’s width.
sidewords-lines-off = Lines are the finished edge: { $sides }, by half the cutter’s width,
    { $offsets }.
