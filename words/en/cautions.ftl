# The usual cautions.
cautions-opening = Machines that cut wood can hurt you and those near you. What follows are the
    usual cautions, not training. The law and the codes of the place you live in, the manuals of
    your machines and licensed practice come first, always.
cautions-eyes = Eyes and ears
cautions-eyes-text = Wear eye and hearing protection whenever a machine runs. Hearing is harmed by
    loud hours added up: { $body } recommends no more than { $level } dB(A) over eight hours, and
    half the time for every { $more } dB more, which leaves { $minutes } minutes a day at
    100 dB(A).
cautions-dust = Dust
cautions-dust-text = Wood dust can cause asthma, and hardwood dust can cause cancer, of the nose
    above all (HSE). Plywood and fibreboard often hold hardwood. Draw dust off where it is made; a
    mask adds to that and does not replace it. Do not sweep settled dust or blow it away. Fine dust
    can burn and explode.
cautions-holding = Workholding
cautions-holding-text = Hold the sheet, and every piece that comes free of it, so that nothing can
    move: small pieces need bridges to the sheet or a layer that holds them. Guide a hand-held
    router so that the cutter pulls against you. Let the cutter stop before you reach in. No loose
    sleeves.
cautions-fire = Fire
cautions-fire-text = Never leave a running machine alone: packed chips and a stalled cutter can
    start a fire.
cautions-loads = Loads
cautions-loads-text = Any load named in this plan is an estimate with its assumptions beside it,
    never a rating. Nothing here was tested to a furniture standard. Toys and children’s furniture
    have standards of their own; this plan claims none.
cautions-wall = Fixing to the wall
cautions-hung = It belongs fixed to the wall: where the fixing fails, it tips or falls with what
    is on it. Take a fixing that suits the wall. { $meeting }; look for the studs, and for pipes and
    cables, before you bore. Do not climb on it.
cautions-tall = It is tall or shallow and can tip, above all on carpet or when a child climbs it.
    Fix it to the wall with a fixing that suits the wall. { $meeting }; look for the studs, and for
    pipes and cables, before you bore. Do not climb on it.
cautions-met = Its holes meet studs that stand { $apart } apart
cautions-reached = Where studs stand { $apart } apart, as is common, bore holes so far apart to meet
    two
cautions-on-board = Screw the “{ $board }” to two studs, which commonly stand { $apart } apart, and
    the piece to it
cautions-batten = Studs commonly stand { $apart } apart, and it is narrower or its width is not
    known: fix a batten across two of them and the piece to the batten
cautions-spacings = { $one }, or { $other }
cautions-table = On a table
cautions-table-text = It stands on a table: keep it back from the edge, and what is heavy low and
    far in. It can slide, and it tips where it is loaded high or on one side. Do not lean on it.
cautions-sitting = Sitting
cautions-sitting-text = Sit in the middle, with all its feet on a level floor. Do not stand on it,
    do not tilt it on two feet, and do not sit on its edge: that is where it tips.
cautions-standing = Standing things on it
cautions-standing-text = Set things down between its feet, the heaviest in the middle: a load on an
    edge beyond the feet can tip it. Do not climb on it.
cautions-tipping = Tipping over
cautions-tipping-text = Whatever is tall or shallow can tip, above all on carpet. Keep what is heavy
    low. Do not climb on it.
cautions-title = Before you cut
cautions-own = For this plan
