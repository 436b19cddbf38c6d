# What a licence lets a reader do.
licencewords-asks-nothing = You may use, share and change these files and sell what you make;
    nothing is asked of you.
licencewords-asks-name = You may use, share and change these files and sell what you make, if you
    name the maker.
licencewords-asks-name-same = You may use, share and change these files and sell what you make, if
    you name the maker and share your changes under the same licence.
licencewords-asks-no-profit = You may share and change these files without profit, if you name the
    maker; ask the maker before you sell them or what you make from them.
licencewords-asks-no-profit-same = You may share and change these files without profit, if you name
    the maker and share your changes under the same licence; ask the maker before you sell them or
    what you make from them.
licencewords-asks-unchanged = You may share these files unchanged and sell what you make, if you
    name the maker; changed files (other sizes too) are not to be shared.
licencewords-asks-unchanged-no-profit = You may share these files unchanged and without profit, if
    you name the maker; changed files are not to be shared; ask the maker before you sell them or
    what you make from them.
licencewords-asks-keep = You may use, share and change these files and sell what you make, if you
    keep the licence and its notices with the files.
licencewords-asks-keep-share = You may use, share and change these files and sell what you make, if
    you keep the licence and its notices with the files and share changes to these files under the
    same licence.
licencewords-asks-keep-built = You may use, share and change these files and sell what you make, if
    you keep the licence and its notices with the files and share what you build on them under the
    same licence.
licencewords-asks-keep-say = You may use, share and change these files and sell what you make, if
    you keep the licence and its notices with the files and say what you changed.
licencewords-asks-keep-not-sold = You may use, share and change these files and sell what you make,
    if you keep the licence and its notices with the files; the files are not to be sold by
    themselves.
licencewords-asks-keep-changed = You may use, share and change these files and sell what you make,
    if you keep the licence and its notices with the files and share changed files under the same
    licence.
licencewords-called = Licence: { $licence }.
licencewords-none = No licence is stated: ask the maker before you share or sell anything made from
    it.
licencewords-rules = This sentence is a summary, not legal advice: what counts is the text of the
    licence.
licencewords-write = Write to { $maker }: { $address }
licencewords-by = { $plan }, by { $maker }.
