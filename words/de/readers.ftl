# Was Leserinnen und Leser gemessen und eingeschickt haben.
readers-title = Was andere gemessen haben
readers-one = Eine Platte, verkauft als { $sold }, maß { $range }. Eine ist zu wenig, um danach zu gehen: Miss deine.
readers-few = { $count } Platten, verkauft als { $sold }, maßen { $range }. So wenige sagen wenig über deine: Miss sie.
readers-many = { $count } Platten, verkauft als { $sold }, maßen { $range }. Etwa eine von { $one } solchen Platten liegt außerhalb: Miss deine.
readers-went = Wie die Verbindungen zusammengingen: { $counts }.
readers-times = { $count } × { $feel }
readers-feel = { $feel ->
    [rattles] sie wackeln
    [by-hand] von Hand
    [by-palm] mit einem Druck des Handballens
    [by-mallet] mit dem Hammer
   *[stuck] gar nicht
 }
readers-from = Ohne Namen eingeschickt, wie es gemessen wurde; nichts davon ist geprüft.
