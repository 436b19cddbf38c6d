# What does not stand a push, or a use.
pushes-sideways = to the left or right
pushes-fore-and-aft = to the front or back
pushes-joints-alone = nothing but its joints resists pushing { $way }
pushes-tips = it tips { $way } before it takes the push
pushes-slides = it slides { $way } before it takes the push
pushes-no-panel = no panel of it lies flat
pushes-too-much = more is asked of it than its estimates allow
pushes-tips-middle = it tips with the person in its middle
