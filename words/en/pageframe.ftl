# Words of pages: frame.
pageframe-skip = Skip to the text
pageframe-private = Private: for the maker’s own disk. This page is no part of the site; do not publish it.
pageframe-releases = { $house }: releases
pageframe-site = Site
pageframe-proposals = { $house }, by { $maker }. These plans are proposals: local codes, the manuals of your machines and licensed practice come first.
pageframe-write = Write to the maker
pageframe-rests = What the figures rest on
pageframe-feed = Feed of releases
