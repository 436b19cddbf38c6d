# What scripts of pages say: no choices in it, values alone.
drawscript-drawing = Drawing
drawscript-keys = { $name }; arrow keys move it, + and − change its size
drawscript-smaller = Smaller
drawscript-larger = Larger
drawscript-whole = Whole
drawscript-close = Close
drawscript-copied = Copied.
