# Finishing and care.
care-title = Care
care-title-finishing = Finishing and care
care-after = After the first season
care-edges = Edges are { $edges }. { $drawings } show which.
care-drawings = The drawings of the parts
care-caution-oily = Oily rags
care-beware-oily = Rags, pads and paper soaked in oil heat up as the oil dries and can catch fire by
    themselves, hours later. Spread them out flat to dry outdoors, or keep them under water in a
    closed tin. Never leave them in a heap, a bin or a pocket. What the can says comes first.
care-caution-sanding = Sanding
care-beware-sanding = Sanding makes the finest dust: draw it off, wear a mask besides, and put on no
    finish before it has settled and is wiped away.
care-look-coat = Where water no longer stands on it in drops, put on another coat.
care-look-bolts = Turn every bolt: wood shrinks as it dries and takes the grip with it.
care-look-screws = Try every screw: one that turns without drawing up no longer holds.
care-look-wall = Pull at it by hand where it is fixed to the wall: nothing may give.
care-look-glue = Look along the glued joints for a line that has opened.
care-look-feet = Look at the feet and at cut edges first: damp gets in there.
