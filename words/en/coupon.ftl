# The fit coupon, which is cut before anything else.
coupon-title = Cut this first
coupon-read = Read it
coupon-correct = Correct once
coupon-caption = The coupon for { $sheet }, on a scrap of { $size }: the plate with its two slots,
    and the tab with its two arms and its tongue. It lies in { $folder }. { $lies }
coupon-steps = Steps of the coupon for { $sheet }
coupon-step = Step
coupon-slot = Slot as drawn
coupon-bare = Without a caliper
coupon-take = Take
