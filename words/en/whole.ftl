# What is made, put together.
whole-title = The whole
whole-set = The whole set, with its overall sizes.
whole-together = Put together, with its overall sizes.
whole-apart = The pieces drawn apart, with their marks.
whole-wall = Fix it to the wall
whole-steady = How steady it stands
