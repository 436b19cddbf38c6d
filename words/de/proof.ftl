# Der Nachweis, dass ein Plan zusammengeht, und was er auslässt.
proof-proved = Die Stücke passen bei der dünnsten, der gezeichneten und der dicksten Platte, und in dieser
  Reihenfolge kommt jedes auf einer geraden Linie an seinen Platz, ohne zu berühren, was schon steht.
  Einkippen, Biegen, Leim und das Gewicht in deinen Händen wurden nicht betrachtet.
proof-blocked = Die Stücke passen bei der dünnsten, der gezeichneten und der dicksten Platte. Für manche
  Schritte wurde kein gerader Weg gefunden: Lies, was die Werkstatt dort über Kippen oder Biegen sagt.
  Auch Leim und das Gewicht in deinen Händen wurden nicht betrachtet.
proof-apart = Es geht in umgekehrter Reihenfolge wieder auseinander, wo nichts geleimt ist.
