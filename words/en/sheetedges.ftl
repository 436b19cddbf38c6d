# Cut edges of sheets, and their swelling.
sheetedges-ply = plies show: sand and seal them, or band what is seen
sheetedges-soft-ply = plies show: sand and seal them, or band what is seen; gaps in the core may want filling
sheetedges-fibre = even and without a grain, but they drink paint: seal or fill them first, coat them twice
sheetedges-particle = open and crumbling: band them
sheetedges-flakes = open flakes: band them, or leave them where nobody touches them
sheetedges-end-grain = end grain drinks finish: seal it first
sheetedges-core = the brown core shows: polish it, or band it
sheetedges-swells = { $share } % thicker for each % of moisture
sheetedges-thicker-dry = { $by } thicker in a dry room
sheetedges-thicker-heated = { $by } thicker in a heated room
sheetedges-thicker-shed = { $by } thicker in a shed
sheetedges-thicker-outdoors = { $by } thicker in the open air
