# Words of pages: log.
pagelog-title = Test cuts
pagelog-lead = Tests and jobs as they were logged: the settings that went in, the edge that came out. What failed is here too.
pagelog-log = The log
pagelog-caution = Settings of one machine and one sheet. Start lower on yours, and keep to the manuals of your machine and cutter.
pagelog-about = Tests and jobs logged at { $house }: settings in, outcome out.
