# Wie weit ein Fräser geschnitten hat, für den, dem er gehört.
metres-way = { $unit ->
    [in] { $way } ft
   *[mm] { $way } m
 }
metres-jobs = { $jobs ->
    [one] { $jobs } Eintrag
   *[other] { $jobs } Einträge
 }
metres-silent = { $silent ->
    [one] { $jobs }; { $silent } Auftrag nennt keine Meter
   *[other] { $jobs }; { $silent } Aufträge nennen keine Meter
 }
metres-new = Hat { $way } geschnitten, seit er neu war ({ $rests }).
metres-sharp = Hat { $way } geschnitten, seit er neu war, { $since } seit dem Schärfen am { $day } ({ $rests }).
metres-more = { $cutter }: { $cut } Diese Dateien brauchen { $way } mehr.
metres-trend = { $how ->
    [falls] In { $sheet } werden die Kanten schlechter, je weiter er schneidet: { $count } Einträge sagen das.
    [level] In { $sheet } werden die Kanten nicht schlechter, je weiter er schneidet, soweit { $count } Einträge es sagen.
   *[few] In { $sheet } { $count ->
        [one] ist { $count } Eintrag
       *[other] sind { $count } Einträge
    } zu wenig, um zu sagen, ob die Kanten mit den Metern schlechter werden.
 }
