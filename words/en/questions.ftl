# Questions that every reader asks.
questions-title = Questions and answers
questions-thickness = My sheet is not quite that thick. What now?
questions-any-thickness = Few are. The plan is for { $sheets }, and every slot follows what you
    measured: open start-here.html, on a computer or a phone, without any network, and type
    your readings.
questions-some-thicknesses = Few are. The plan is for { $sheets }, in { $sets } sets of files: take
    the one that your thickest reading names.
questions-one-thickness = The plan is for { $sheets } alone: take a sheet that measures so.
questions-cutter = Which cutter do I need?
questions-cutters = { $cutters } for a router, or a smaller one; a larger one leaves inside corners
    too full. With a saw or by hand, none.
questions-sheets = How many sheets do I buy?
questions-some-sheets = { $count ->
    [one] { $count } sheet of { $sheet }, { $size }
   *[other] { $count } sheets of { $sheet }, { $size }
 }
questions-all-sheets = { $sheets }, as laid out in this plan.
questions-formats = Which file formats are there?
questions-files = Cut files come { $coming }, one file for each sheet and one for each part.
    Templates, booklet, layouts and setup sheets are PDF, on A4 and on US Letter. Lists are CSV,
    which any spreadsheet opens.
questions-selling = May I sell what I make?
