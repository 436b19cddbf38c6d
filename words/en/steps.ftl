# Putting it together, step by step.
steps-title = Putting it together
steps-ahead = { $count ->
    [one] { $count } step
   *[other] { $count } steps
 }.
steps-taking = { $count ->
    [one] { $count } step
   *[other] { $count } steps
 }, about { $time } in all.
steps-have = Have at hand: { $tools }.
steps-need-pieces = Pieces
steps-need-hardware = Hardware
steps-need-tools = Tools
steps-need-time = Time
steps-need-wedges = Wedges
steps-wedge = { $piece }: driven home it is about { $drive } further in than drawn, and { $left } stand out at the thick end
steps-wedge-behind = { $piece }: driven home it is about { $drive } further in than drawn, and { $left } stand out at the thick end. { $behind } of wood are left behind its slot
steps-need-people = People
steps-need-holds = Held meanwhile
steps-need-order = One after another
steps-film = The film
steps-watch = Watch it being built: { $address }
steps-film-parts = What is in the film
steps-film-at = At
steps-film-what = What
