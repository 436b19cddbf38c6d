# What the booklet says of itself, and the words of its pages.
booklet-title = { $title }: booklet
booklet-subject = Booklet for { $title }, release { $version }
booklet-foot = { $title } · release { $version }
booklet-notices = Please note
booklet-caution = Caution
booklet-by-hand = Without a router
booklet-page = Page { $page } of { $pages }
booklet-led = { $words } (page { $page })
