# Die Schritte einer Reihenfolge, die errechnet wurde.
found-order = Diese Reihenfolge ist aus den Verbindungen errechnet: Jedes Stück kommt auf einer geraden
  Linie an seinen Platz. Die Werkstatt hat die Schritte nicht aufgeschrieben; sieh dir jedes Bild an,
  bevor du schiebst.
found-set-down = { $pieces } hinstellen
found-push-down = { $pieces } von oben aufschieben
found-push-up = { $pieces } von unten aufschieben
found-push-left = { $pieces } von links aufschieben
found-push-right = { $pieces } von rechts aufschieben
found-push-front = { $pieces } von vorn aufschieben
found-push-behind = { $pieces } von hinten aufschieben
found-more = { $count } weitere
