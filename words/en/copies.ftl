# How the sheets of several copies were counted.
copies-together = Sheets are counted for all { $called ->
    [set] sets
   *[copy] copies
 } laid out together.
copies-apart = Every { $called ->
    [set] set
   *[copy] copy
 } is counted with whole sheets of its own; laid out together they may take fewer.
