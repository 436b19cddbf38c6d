# Die Formate der Schnittdateien.
formatwords-in-inches = { $format } in Zoll
formatwords-one = ein { $format }
formatwords-as = als { $format }
formatwords-units = { $inches ->
    [0] in Millimetern
   *[other] in Millimetern, außer denen in Zoll
 }
formatwords-coming = { $inches ->
    [0] { $count ->
        [1] { $formats }, in Millimetern
        [2] { $formats }, beide in Millimetern
       *[other] { $formats }, alle in Millimetern
     }
   *[other] { $formats }; die ohne Einheit sind in Millimetern
 }
