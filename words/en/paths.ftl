# The ways to get the parts cut.
paths-router = I have a CNC router
paths-saw = I have a table saw or a track saw
paths-hand = I have a drill, a jigsaw and paper
paths-shop = A shop cuts for me
paths-look = I only want to look
