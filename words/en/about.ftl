# About this plan: whose it is and how it came about.
about-title = About this plan
about-licence = Licence
about-text = Its text: { $address }, in the bundle { $file }
about-maker = The maker
about-pictures = Pictures
about-newest = The newest release
about-stand = Corrections and later releases stand at { $address }
about-how = How it was made
about-made = { $title }, release { $version } of { $day }, designed by { $maker }. Worked out, drawn
    and set by Kerfolio from one plan, in Source Serif and Source Sans. Every number here, in the
    lists and in the cut files comes from that plan.
