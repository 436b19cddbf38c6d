# Tools, and what to buy, all of it as it is sold.
need-title = What you need
need-tools = Tools
need-tool = Tool
need-for = For
need-tools-why = What cuts the parts is yours to choose: each way has its chapter.
need-tools-bits = Bits for holes are for those who drill by hand; a router makes most of the holes.
need-count = Count
need-sheets = Sheets
need-sheet = Sheet
need-size = Size
need-along = Sizes of sheets: along the grain first, then across.
need-grade = grade { $grade }
need-plies = { $plies ->
    [one] { $plies } ply
   *[other] { $plies } plies
 }
need-boards = Boards
need-board = Board
need-section = Section
need-length = Length to buy
need-cut-from = for { $pieces }
need-hardware = Hardware
need-item = Item
need-twin = Or, in inches
need-hardware-sum = Counts are summed over the steps: pieces, not packs.
need-edges = Edges
need-stretches = Stretches
need-together = Together
need-to-buy = To buy
need-used-up = Glue, finish and what is used up
need-hardware-full = At full size, if printed so: lay yours on it. Heads and fittings differ a little by maker.
