# The proof that a plan goes together, and what it leaves out.
proof-proved = The pieces fit at the thinnest, the drawn and the thickest sheet, and in this order each
  comes home along a straight line without touching what stands. Tilting in, bending, glue and the
  weight in your hands were not looked at.
proof-blocked = The pieces fit at the thinnest, the drawn and the thickest sheet. For some steps no
  straight way home was found: see what the maker says there about tilting or bending. Glue and the
  weight in your hands were not looked at either.
proof-apart = It comes apart again in the reverse order, where nothing is glued.
