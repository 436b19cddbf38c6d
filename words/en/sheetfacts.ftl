# The most that a figure comes to within a range.
sheetfacts-upto = up to { $figure }
