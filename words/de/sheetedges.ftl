# Schnittkanten von Platten, und ihr Quellen.
sheetedges-ply = die Lagen sind zu sehen: schleifen und versiegeln, oder bekanten, was man sieht
sheetedges-soft-ply = die Lagen sind zu sehen: schleifen und versiegeln, oder bekanten, was man sieht; Lücken im Kern wollen vielleicht gefüllt werden
sheetedges-fibre = eben und ohne Faser, aber sie trinken Farbe: erst versiegeln oder füllen, dann zweimal streichen
sheetedges-particle = offen und bröckelig: bekanten
sheetedges-flakes = offene Späne: bekanten, oder lassen, wo niemand sie anfasst
sheetedges-end-grain = Hirnholz trinkt: erst versiegeln
sheetedges-core = der braune Kern ist zu sehen: polieren oder bekanten
sheetedges-swells = { $share } % dicker je % Feuchte
sheetedges-thicker-dry = { $by } dicker in einem trockenen Raum
sheetedges-thicker-heated = { $by } dicker in einem geheizten Raum
sheetedges-thicker-shed = { $by } dicker in einem Schuppen
sheetedges-thicker-outdoors = { $by } dicker im Freien
