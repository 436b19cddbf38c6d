# Which cut files suit a sheet of some thickness.
folder-thinner = none: thinner than the plan is published for
folder-thicker = none: thicker than the plan is published for
folder-made = files made for { $thickness }
folder-none-ready = none is ready-made
folder-next-thicker = the next thicker
folder-a-folder = a folder for { $sheet }
folder-measuring = { $sheet } measuring { $thickness }
folder-goes-with = Goes with sheet-{ $number } of the cut files for { $sheets } and no other
    thickness.
folder-goes-with-chosen = Goes with sheet-{ $number } of the cut files for { $sheets } only. If your
    sheet measures otherwise, take this page and that file for its own thickness.
folder-file = { $file } is for { $sheets } and no other thickness.
folder-file-of-several = { $file } is for { $sheets } only. If your sheet measures otherwise, take
    sheet-{ $number } of the files for its thickness.
folder-sizes = These sizes are for { $sheets } and no other thickness.
folder-sizes-of-several = These sizes are for { $sheets } only. If your sheet measures otherwise,
    compare every piece with its template for that thickness.
