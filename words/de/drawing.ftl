# Bilder: Beschriftungen, Titel und was sie zeigen, in Worten.
drawing-lines = Die schattierte Kante einer Schablone, ihr Schlitz mit gebohrten Ecken, eine Bohrung
  und zwei Balken
drawing-offcut = Ein Reststück steht hochkant, eine Fläche an der Linie eines Schlitzes; an der anderen
  ein Riss
drawing-an-offcut = Reststück
drawing-a-mark = Riss
drawing-a-line = Linie
