# Ein anderes Material an Stelle des eigenen.
swaps-title = Ein anderes Material
swaps-one = { $after } statt { $before }
swaps-both = { $before } und { $after }
swaps-what = Was
