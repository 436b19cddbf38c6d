# What a plan was proved for, and where.
provedwords-at = Proved at { $thickness }.
provedwords-range = Proved { $spans }: { $sheets ->
    [1] at the thinnest and the thickest sheet
   *[other] with the thinnest and the thickest of every sheet
 }, as drawn{ $points ->
    [0] {""}
    [one] {" "}and at { $points } point between
   *[other] {" "}and at { $points } points between
 }.
provedwords-span-at = at { $span }
provedwords-span-from = from { $span }
provedwords-fits = { $span }, with fits from { $least } to { $most }
provedwords-of = { $span } of { $sheet }
