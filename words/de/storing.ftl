# Lagern und Tragen.
storing-second = Ein zweites obendrauf
storing-carried = Zusammengebaut, getragen von
storing-flat = Flach, alles in einem Stapel
storing-flat-carried = Flach, getragen von
storing-beside = Flach, kleine Stücke nebeneinander
storing-clamp = bleibt dort nicht von selbst: Klemme die beiden aneinander.
storing-lower = Es säße { $saved } tiefer als seine Höhe.
storing-nests = ineinander: Es steht { $lift } höher, das spart { $saved }
storing-stacks = aufeinander: Es steht { $lift } höher, seine volle Höhe
storing-one = einer Person: bis { $mass } so weit vom Körper (NIOSH-Hebegleichung)
storing-two-long = zwei Personen: über { $long } lang
storing-two-heavy = zwei Personen: über { $mass } so weit vom Körper (NIOSH-Hebegleichung)
storing-two-deep = zwei Personen: zu tief für eine
storing-more = mehr als zwei, oder in Stücken: über { $mass }, zweimal { $half }
