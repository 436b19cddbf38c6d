# Pictures: labels, titles, and what they show in words.
drawing-lines = A template's shaded edge, its slot with bored corners, a hole, and two bars
drawing-offcut = An offcut stands on its edge, one face on a slot's line; a mark at the other
drawing-an-offcut = offcut
drawing-a-mark = mark
drawing-a-line = line
