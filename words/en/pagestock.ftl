# Words of pages: stock.
pagestock-title = What the figures rest on
pagestock-lead = Sheets, boards, cutters, hardware, papers and chip loads as the plans here reckon with them, and where each figure comes from.
pagestock-contents = Contents
pagestock-chip-loads = The chip each edge takes at one turn. Published tables differ many times over, with the machine they are meant for: none is mixed with another, and the log of a machine outranks them all. Where no cutter is named, the table names none.
pagestock-depth-rules = How deep one pass may go, and the share of the chip load that is left there. Begin where the whole chip load is left.
pagestock-movements = By how much a size grows for each per cent of moisture that a material takes up, and the moisture it has when it is bought. How damp it gets follows from the humidity of the place it lives in.
pagestock-finishes = How thick one coat is while it is wet, and the share of it that stays. What the can says outranks these.
pagestock-sheets = Stiffness is the modulus of elasticity and strength the bending strength of the panel loaded flat. Creep is the factor for lasting load in a heated room.
pagestock-letters = A letter leads to the note at the end of its list. “From memory” means that the document was not at hand when the figure was written down: look it up before you rely on it. Files under { $folder } are the maker’s own; the rest comes with the program. Nothing here is a rating: measure the sheet at hand, and put codes and licensed practice first.
pagestock-about = Sheets, boards, cutters, hardware and chip loads: every figure with its source.
pagestock-no-source = no source stated
pagestock-minimum = least values
pagestock-characteristic = values that 19 of 20 pieces reach
pagestock-mean = mean values
pagestock-claim = as claimed
pagestock-kind = { $kind }; { $source }
pagestock-items = { $count ->
    [one] { $count } entry
   *[other] { $count } entries
 }
