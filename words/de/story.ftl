# Warum es entstanden ist.
story-title = Die Idee
