# Storing and carrying.
storing-second = A second one on top of it
storing-carried = Put together, carried by
storing-flat = Flat, all of it in one pile
storing-flat-carried = Flat, carried by
storing-beside = Flat, small pieces side by side
storing-clamp = does not stay there by itself: clamp the two to each other.
storing-lower = It would sit { $saved } lower than its height.
storing-nests = nests: it stands { $lift } higher, which saves { $saved }
storing-stacks = stacks, and adds its full height, { $lift }
storing-one = one person: up to { $mass } so far from the body (NIOSH lifting equation)
storing-two-long = two persons: over { $long } long
storing-two-heavy = two persons: over { $mass } so far from the body (NIOSH lifting equation)
storing-two-deep = two persons: too deep for one
storing-more = more than two, or in pieces: over { $mass }, twice { $half }
