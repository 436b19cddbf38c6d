# Wofür ein Plan bewiesen wurde und wo.
provedwords-at = Bewiesen bei { $thickness }.
provedwords-range = Bewiesen { $spans }: { $sheets ->
    [1] bei der dünnsten und der dicksten Platte
   *[other] mit der dünnsten und der dicksten von jeder Platte
 }, wie gezeichnet{ $points ->
    [0] {""}
    [one] {" "}und an { $points } Punkt dazwischen
   *[other] {" "}und an { $points } Punkten dazwischen
 }.
provedwords-span-at = bei { $span }
provedwords-span-from = von { $span }
provedwords-fits = { $span }, mit Passungen von { $least } bis { $most }
provedwords-of = { $span } für { $sheet }
