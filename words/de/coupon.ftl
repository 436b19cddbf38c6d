# Die Passprobe, die vor allem anderen geschnitten wird.
coupon-title = Schneide das zuerst
coupon-read = Ablesen
coupon-correct = Einmal korrigieren
coupon-caption = Die Passprobe für { $sheet }, auf einem Reststück von { $size }: das Brettchen mit
    seinen zwei Schlitzen und der Zapfen mit seinen zwei Armen und seiner Zunge. Sie liegt in
    { $folder }. { $lies }
coupon-steps = Stufen der Passprobe für { $sheet }
coupon-step = Stufe
coupon-slot = Schlitz, wie gezeichnet
coupon-bare = Ohne Messschieber
coupon-take = Nimm
