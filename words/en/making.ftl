# What a plan makes.
making-line = { $thing }: make { $count }
making-set = A set: { $things }.
making-rest = Boards and hardware for all of it
making-weighs = The set weighs
making-size = As drawn, width × depth × height
making-lies-on = { $thing } lies on
making-held-lying = { $things }, loose
making-held-clamped = { $things }, clamped to them
making-held-screwed = { $things }, screwed to them
making-held-brackets = { $things }, held by brackets
making-beyond = { $beyond } beyond the outermost
making-each = { $mass } each
making-not-shown = Not shown: { $pieces }.
making-one-set = set
making-many-set = sets
making-one-copy = copy
making-many-copy = copies
