# What another material brings with it: told to readers, and to makers when they prove.
minded-overloaded = `{ $span }` is reckoned for { $bears }, not { $asked }
minded-lifts = `{ $span }` lifts off with { $lifts } at its end, not { $asked }
minded-lifts-spread = `{ $span }` lifts off with { $lifts } spread over its overhang, not { $asked }
minded-pokes-through = `{ $item }` comes through `{ $part }`
minded-bites = `{ $item }` bites { $bite } of `{ $part }`
minded-bolt-short = `{ $item }` is too short for its two parts
