# Das Meiste, auf das eine Zahl in einem Bereich kommt.
sheetfacts-upto = bis zu { $figure }
