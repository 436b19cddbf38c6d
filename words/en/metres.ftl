# How far a cutter has cut, for its maker.
metres-way = { $unit ->
    [in] { $way } ft
   *[mm] { $way } m
 }
metres-jobs = { $jobs ->
    [one] { $jobs } entry
   *[other] { $jobs } entries
 }
metres-silent = { $silent ->
    [one] { $jobs }; { $silent } job says no metres
   *[other] { $jobs }; { $silent } jobs say no metres
 }
metres-new = Has cut { $way } since it was new ({ $rests }).
metres-sharp = Has cut { $way } since it was new, { $since } since it was sharpened on { $day } ({ $rests }).
metres-more = { $cutter }: { $cut } These files take { $way } more.
metres-trend = { $how ->
    [falls] On { $sheet } outcomes fall as its metres grow: { $count } entries say so.
    [level] On { $sheet } outcomes do not fall with its metres, as far as { $count } entries tell.
   *[few] On { $sheet } { $count ->
        [one] { $count } entry is
       *[other] { $count } entries are
    } too few to tell whether outcomes fall with its metres.
 }
