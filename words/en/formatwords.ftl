# The formats of cut files.
formatwords-in-inches = { $format } in inches
formatwords-one = one { $format }
formatwords-as = as { $format }
formatwords-units = { $inches ->
    [0] in millimetres
   *[other] in millimetres, but for those in inches
 }
formatwords-coming = { $inches ->
    [0] { $count ->
        [1] { $formats }, in millimetres
        [2] { $formats }, both in millimetres
       *[other] { $formats }, all in millimetres
     }
   *[other] { $formats }; those without a unit are in millimetres
 }
