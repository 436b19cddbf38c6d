# What tells a piece of hardware from others.
hardwarewords-long = { $length } long
hardwarewords-outside = ø { $wide } outside
hardwarewords-pilot = for a hole of { $hole }
