# What scripts of pages say: no choices in it, values alone.
fitpage-too-old = This browser is too old to unpack the files: open the page in one of 2023 or later, or take a set that stands ready.
fitpage-not-fetched = The files could not be fetched. Opened from a disk, this page cannot read them: open start-here.html in the bundle, which has them in it.
fitpage-say-cutter = Say how wide the cutter is.
fitpage-cutters = For { $sheet } files are made for cutters of { $least } to { $most }.
fitpage-most = most
fitpage-mean = mean
fitpage-least = least
fitpage-once = once
fitpage-take-set = Take the set { $folder }
fitpage-caption = { $sheet }: a tab in its slot, to scale; in the circle twelve times as large.
fitpage-caption-dashed = { $sheet }: a tab in its slot, to scale; in the circle twelve times as large. Dashed: where the sheet is thinnest.
fitpage-made-for = Made for { $thickness }
fitpage-as-drawn = As drawn: { $thickness }
fitpage-left-out = There are fields for { $fields } of the { $count } readings: { $texts } was left out.
fitpage-left-out-many = There are fields for { $fields } of the { $count } readings: { $texts } were left out.
fitpage-saved = Saved: { $name }
