# How hard a plan is to build, and why.
difficulty-easy = Easy
difficulty-care = Some care
difficulty-demanding = Demanding
difficulty-size = { $pieces ->
    [one] { $pieces } piece
   *[other] { $pieces } pieces
 }{ $steps ->
    [0] {""}
    [one] {" "}in { $steps } step
   *[other] {" "}in { $steps } steps
 }
difficulty-joints-fingers = finger joints, whose fingers all enter at once
difficulty-joints-blind = grooves or recesses whose depth must be right
difficulty-joints-edges = edges that are held square while they are screwed
difficulty-joints-wedges = wedges that are driven by feel
difficulty-joints-glued = it is glued: what has set is not put right
difficulty-joints-bored = holes bored into edges by hand
difficulty-joints-squared = inside corners that are squared by hand
difficulty-plain = plain joints that go together by hand
difficulty-driven = joints that are driven in and hold by their grip
difficulty-tight = tight joints, with { $room } of room on each side
difficulty-slant = panels that meet at { $angle }, not square
difficulty-at-once = { $joints ->
    [one] { $joints } joint that goes home at once in step { $step }
   *[other] { $joints } joints that go home at once in step { $step }
 }
difficulty-lifted = { $mass } to be moved at once in step { $step }
