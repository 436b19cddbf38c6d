# Was einen Beschlag von anderen unterscheidet.
hardwarewords-long = { $length } lang
hardwarewords-outside = ø { $wide } außen
hardwarewords-pilot = für ein Loch von { $hole }
