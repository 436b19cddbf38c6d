# What the script says that opens a sealed bundle: no choices in it, values alone.
unsealscript-opening = Opening. This takes some seconds.
unsealscript-saved = Opened and whole: { $name } is saved.
unsealscript-empty = Type the key first.
unsealscript-key = The key does not open this bundle. Look for a slip in typing it; if there is none, it may have been withdrawn: ask for a new one. Nothing was saved.
unsealscript-count = The key does not open this bundle: it has seven words, and you typed { $count }. Nothing was saved.
unsealscript-none = What was fetched is no sealed bundle. Tell the maker. Nothing was saved.
unsealscript-version = The bundle is sealed in form { $version }, which this page does not know. Load the page anew. Nothing was saved.
unsealscript-head = The head of the sealed bundle is damaged. Tell the maker. Nothing was saved.
unsealscript-short = The sealed bundle is cut short. Try again; if it stays so, tell the maker. Nothing was saved.
unsealscript-longer = The sealed bundle is longer than it says. Tell the maker. Nothing was saved.
unsealscript-damaged = The sealed bundle is damaged, in chunk { $number } of { $chunks }. Try again; if it stays so, tell the maker. Nothing was saved.
unsealscript-fetched = The sealed bundle could not be fetched. See that you are connected and try again. Nothing was saved.
unsealscript-unnamed = You named no file. Nothing was saved.
unsealscript-trouble = It could not be opened: { $trouble }. Nothing was saved.
unsealscript-plain = This page did not come over https, and without that a browser opens no seal. Load the sealed bundle and open it as said below.
unsealscript-disk = This page stands on a disk, where a browser reads no other file. Open the sealed bundle as said below.
