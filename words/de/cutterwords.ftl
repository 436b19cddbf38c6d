# Für welchen Fräser die Dateien gezeichnet sind und welche anderen durchkommen.
cutterwords-wide = { $cutter }, { $wide } breit
cutterwords-drawn = Die Schnittdateien sind gezeichnet für: { $cutters }.
cutterwords-opened = Innenecken sind etwas weiter als er geöffnet, denn viele Fräsprogramme lassen
    Bögen von genau seinem Radius weg; ein kleinerer Fräser geht auch, ein größerer lässt in den
    Ecken zu viel stehen.
cutterwords-square = Manche Innenecken sind rechtwinklig gezeichnet: Was der Fräser stehen lässt,
    wird von Hand ausgearbeitet.
cutterwords-tightest = Die engste Innenrundung hat einen Radius von { $radius }: Kein Fräser, der
    breiter als { $most } ist, folgt ihr.
