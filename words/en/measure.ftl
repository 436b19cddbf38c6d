# Where a sheet is measured and which files that means.
measure-title = Measure your sheet
measure-open = Open { $start }, on a computer or a phone, without any network, and type your readings: it
    makes the files for just your sheet.
measure-coupon-first = Cut the { $coupon } before anything else.
measure-coupon = coupon
measure-folders = Folders of cut files, by measured thickness
measure-folder = Folder
measure-fit = Fit on each side
measure-others = Other sheets and beds
measure-others-lie = It is laid out for other sheets and beds, too: files of their sheets lie in a
    folder beside the others, and those of the parts serve all.
measure-other = { $sheet }: { $takes }, in { $folder }
measure-joints = Fit of the joints
measure-damp = { $care } make pieces thicker. { $room }
measure-care = Finish and damp
