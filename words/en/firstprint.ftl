# The page of templates that is printed alone first.
firstprint-title = Print this page alone first
firstprint-templates = templates
firstprint-what = { $plan }: templates. Print at 100 %: “actual size”, without fitting to the page.
firstprint-for = For { $sheets }
firstprint-part = Part
firstprint-pages = Pages
firstprint-measure-head = Measure the square
firstprint-measure = Lay a steel rule along both sides. Each must be { $side } to within { $within }
  (common practice for cutting by hand).
firstprint-other-mm = The marks at { $other } serve an inch rule.
firstprint-other-in = The marks at { $other } serve a metric rule.
firstprint-no-rule = No rule at hand?
firstprint-card = A bank card covers the outline in the square exactly: { $size }.
firstprint-a-card = a bank card, { $size }
firstprint-alt = A square of { $side } with a card
firstprint-off-head = When only one direction is off
firstprint-off = Both sides wrong by the same: the program scaled the page; look for “fit”, “shrink”
  or “scale” and set 100 %. Only one side wrong: the printer feeds paper too far or not far enough.
  Use thicker paper, a slower setting or the straight feed, or have the roll page printed at a shop.
firstprint-off-tiles = If it stays, lay the tiles by their true distance instead of by the crosses.
  Measure the { $side } at the upper and the left edge of a tile, and move each next tile in the
  wrong direction by the length in the table: apart when the print is short, together when it is
  long. A part on one page is corrected by hand: its true size stands at the top. Slots follow your
  sheet, not paper.
firstprint-reads = { $side } reads
firstprint-short-edge = Short edge
firstprint-long-edge = Long edge
firstprint-shift = Shift from one tile to the next, along the short or the long edge of the paper:
  less in proportion where the map shows them nearer together.
