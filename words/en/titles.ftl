# What parts, pieces and features are called.
titles-test-joint = Test joint
titles-piece = { $piece } { $part }
titles-of-copy = { $piece } of { $thing } { $copy }
titles-of-number = { $piece } of number { $copy }
titles-feature-of = { $feature } of the { $part }
