# Why the maker made it.
story-title = The idea
