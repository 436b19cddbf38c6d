# Was ein Stück rettet.
rescuewords-laid = Leg das Stück, wie die Datei es zeigt, die Sichtseite nach oben, mit der unteren
    Kante an einen Anschlag und mit der linken an einen zweiten: Deren Ecke ist 0,0. Setz z null wie
    beim ersten Schnitt und probiere es über dem Stück.
rescuewords-glued = Leim jeden Streifen an eine Wand seiner Öffnung oder an das, was dort
    hineingeht, lass ihn trocknen und schneide ihn bündig ab.
rescuewords-offcut = `{ $part }` liegt wie gezeichnet, links unten auf dem Reststück.
rescuewords-offcut-turned = `{ $part }` liegt um { $turn } Grad gedreht, links unten auf dem
    Reststück.
rescuewords-slips = Streifen von etwa { $about }: { $layers }, so dick, wie das gewöhnlich ist.
rescuewords-slip = { $name }: { $count } von { $size }
rescuewords-layers = { $count ->
    [one] { $count } Lage { $slip } ({ $thickness })
   *[other] { $count } Lagen { $slip } ({ $thickness })
 }
rescuewords-slip-veneer = Furnier
rescuewords-slip-card = Karton
rescuewords-slip-paper = Papier
rescuewords-offcut-for = Reststück für { $mark }, { $part }
