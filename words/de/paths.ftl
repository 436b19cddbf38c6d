# Die Wege, die Teile zu schneiden.
paths-router = Ich habe eine CNC-Fräse
paths-saw = Ich habe eine Tisch- oder Tauchsäge
paths-hand = Ich habe Bohrer, Stichsäge und Papier
paths-shop = Ein Betrieb schneidet für mich
paths-look = Ich will nur schauen
