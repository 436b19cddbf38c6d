# What readers measured and sent home.
readers-title = What readers measured
readers-one = One sheet sold as { $sold } measured { $range }. One is too few to go by: measure yours.
readers-few = { $count } sheets sold as { $sold } measured { $range }. So few say little of yours: measure it.
readers-many = { $count } sheets sold as { $sold } measured { $range }. About one in { $one } of all such sheets lies outside that: measure yours.
readers-went = How the joints went together: { $counts }.
readers-times = { $count } × { $feel }
readers-feel = { $feel ->
    [rattles] they rattle
    [by-hand] by hand
    [by-palm] with a push of the palm
    [by-mallet] with a mallet
   *[stuck] not at all
 }
readers-from = Sent by readers without a name, as they measured it; nothing of it was checked.
