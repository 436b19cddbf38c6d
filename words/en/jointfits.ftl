# Which joints have room of their own, and how much.
jointfits-head-joints = Joints
jointfits-head-for = For
jointfits-head-side = Each side
jointfits-head-added = Finish and damp
jointfits-head-ends = At the ends
jointfits-some = Some joints have room of their own on each side of what goes in: by what they are
    for, how long they are and how many enter together.
jointfits-all = Every joint has this room on each side of what goes in, bare and dry: its fit, by
    what it is for, how long it is and how many enter together, and what finish and damp want of it.
jointfits-chosen = It follows the fit that you choose, but for lengths that the maker states.
jointfits-for-knock-down = knock-down
jointfits-for-glued = glued
jointfits-for-press = press
jointfits-for-drop-in = drop-in
jointfits-called-into = { $one } into { $other }
jointfits-called-with = { $one } with { $other }
jointfits-called-on = { $one } on { $other }
jointfits-called-through = { $one } through { $other }
