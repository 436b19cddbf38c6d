# Was mit den Kanten der Teile geschieht.
edgewords-title = Kanten
edgewords-map = Farbige Linien mit kleinen Buchstaben zeigen, was mit einer Kante geschieht, wenn
    das Teil fertig gefräst ist; die Erklärung steht unter jedem Teil. Schnittdateien und Schablonen
    wissen nichts davon.
edgewords-buy = Zu kaufen: an jedem Ende jedes Streifens { $more } mehr, die bündig abgeschnitten
    werden. Kantenband ist breiter, als die Platte dick ist. Miss deine Kanten, bevor du es ablängst.
