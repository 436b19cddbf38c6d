# Aufzählungen.
lists-one = { $item }
lists-more = { $head }, { $item }
lists-and = { $head } und { $item }
lists-or = { $head } oder { $item }
