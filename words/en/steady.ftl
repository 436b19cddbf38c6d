# Size, weight, how steady it stands.
steady-size = Put together, width × depth × height
steady-flat = Flat, all pieces in one pile
steady-weight = Weight of the pieces
steady-centre = Centre of gravity
steady-centre-at = { $height } above the floor, { $left } from the left, { $front } from the front
steady-floor = On the floor
steady-falls = It does not stand by itself: nothing flat touches the floor.
steady-around = { $size } around what touches it
steady-tilted = Tips, empty, when tilted by
steady-tilted-loaded = Tips, loaded on the edge of its panel, when tilted by
steady-with = { $tilt }, with { $mass }
steady-angle = { $angle }, { $towards }
steady-by-itself = nothing: it falls over by itself, { $towards }
steady-pushed = Tips, empty, when pushed with
steady-push = { $force } at the top, { $top } up, { $towards }
steady-towards = to the { $sides }
steady-side-front = front
steady-side-back = back
steady-side-left = left
steady-side-right = right
steady-side-front-left = front left
steady-side-front-right = front right
steady-side-back-left = back left
steady-side-back-right = back right
steady-note = Worked out for the pieces alone, stiff, empty and on a hard, level floor. A carpet, an
  uneven floor, loose joints and a load on one side make it worse. The angle is information, not
  approval: local codes and licensed practice come first.
steady-note-storing = Worked out for the pieces alone, stiff, empty and on a hard, level floor. A
  carpet, an uneven floor, drawers, loose joints and a climbing child make it worse. The angle is
  information, not approval: local codes and licensed practice come first.
steady-wall = What is as tall or as shallow as this and stores things belongs fixed to the wall.
