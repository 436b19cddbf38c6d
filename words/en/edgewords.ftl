# What is done to the edges of parts.
edgewords-title = Edges
edgewords-map = Coloured lines with small letters are what is done to an edge once the part is cut;
    the key is below each part. Cut files and templates know nothing of it.
edgewords-buy = To buy: { $more } more at each end of every strip, to be trimmed flush. Banding is
    wider than the sheet is thick. Measure your edges before you cut it to length.
