# Enumerations.
lists-one = { $item }
lists-more = { $head }, { $item }
lists-and = { $head } and { $item }
lists-or = { $head } or { $item }
