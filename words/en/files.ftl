# All files of a bundle, and what they are for.
files-title = All files
files-first = Read these first
files-first-why = The booklet, the fit coupon that is cut before anything else, and the licence.
files-checking = For checking and for programs
files-for-plan = { $file } tells the whole plan to other programs.
files-for-sums = { $file } has a check sum for every file: a file that is not in it, or differs from it,
    is not the maker’s.
files-in-cut = Cut files for a router, a folder for each thickness that stands ready; engravings
    alone, centred, in engravings.
files-in-templates = Full-size paper templates to cut by, a file of all parts for each thickness.
files-in-lists = What to cut and what to buy, as tables that any spreadsheet opens.
files-in-setup = For the machine: where the sheet lies, which cutter, in which order, for each
    thickness that stands ready.
files-in-layout = Pictures of every sheet with its pieces, for each thickness that stands ready; saw
    is for a table saw.
files-in-model = The whole thing in three dimensions.
files-shelf = { $folder } ({ $files ->
    [one] { $files } file
   *[other] { $files } files
 })
