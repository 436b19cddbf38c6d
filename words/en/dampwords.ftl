# What finish and damp do to joints.
dampwords-room = Joints have room for that besides their fit: bare and dry they go together more
    loosely than they will stay.
dampwords-place = It is made to live in { $climate ->
    [dry] a dry room
    [heated-room] a heated room
    [shed] a shed
   *[outdoors] the open air
 }, in air of { $least } to { $most } % humidity.
dampwords-unknown = How { $sheet } swells is not known.
dampwords-swells = { $sheet } is at { $bought } % moisture when it is bought; there it comes to
    { $most } % and is { $thicker } thicker.
dampwords-stays = { $sheet } is at { $bought } % moisture when it is bought; there it stays below
    that, and swells by nothing.
dampwords-before = It is finished before assembly, with { $coats ->
    [one] { $coats } coat
   *[other] { $coats } coats
 } of { $finish }: a film of { $film } in all. That lies on every face and wall, so that each side of
    a joint has it twice.
dampwords-after = It is finished after assembly, with { $coats ->
    [one] { $coats } coat
   *[other] { $coats } coats
 } of { $finish }: a film of { $film } in all. None of it lies in the joints.
dampwords-sanded = Sanding takes { $off } off each face before.
dampwords-glue = Keep the film off what is glued: mask the faces that meet.
