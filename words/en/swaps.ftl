# Another material in place of a plan's own.
swaps-title = Another material
swaps-one = { $after } in place of { $before }
swaps-both = { $before } and { $after }
swaps-what = What
