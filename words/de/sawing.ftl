# Schablonen: was man vor dem Sägen wissen muss.
sawing-title = Bevor du sägst
sawing-lines = Die Linien
sawing-line-edge = Die Linie ist die fertige Kante, ihre schattierte Seite ist Abfall: außen um das
  Teil herum, innen in Schlitzen, Ausklinkungen und Öffnungen. Säge im Schatten, neben der Linie,
  und feile bis an sie heran.
sawing-line-drill = Bohre zuerst die kleinen Kreise, mit dem Bohrer, der unter dem Teil steht: Sie
  öffnen die Ecken von Zapfen und Schlitzen.
sawing-line-hole = Ein Kreuz ist die Mitte einer Bohrung. Daneben stehen ihre Bohrer in der
  Reihenfolge des Bohrens und wie tief jeder geht. Was getönt ist, geht nicht durch: Seine Tiefe steht
  dabei.
sawing-line-bars = Miss von den beiden Kanten mit den dicken Balken aus; die Übersicht eines Teils
  sagt, was wo liegt.
sawing-own = Deine eigene Platte
sawing-offcut = Ein Schlitz ist für die Platte auf Seite 1 gezeichnet, mit seinem Spiel. Für genau
  deine Platte stelle ein Reststück hochkant auf den Schlitz, eine Fläche an der Linie, die näher an
  einem Balken liegt, und reiße an der anderen Fläche an: Dorthin gehört die andere Linie. Säge
  innerhalb von beiden und feile, bis das Reststück mit Handdruck hineingeht. Ausklinkungen werden
  ebenso angerissen.
sawing-test-joint = Probeverbindung
sawing-first = Säge zuerst die Probeverbindung, zweimal, aus einem Reststück genau dieser Platte und
  mit der Säge, die du nehmen wirst: Ein Stück muss mit Handdruck in das andere gehen. Zu stramm: nimm
  eine Spur mehr von der Linie weg; zu locker: lass sie stehen. Säge noch einmal, bis es passt, und
  säge dann die Teile ebenso.
sawing-by-hand = Von Hand?
