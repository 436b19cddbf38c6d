# Ein Tag, wie CLDR Muster schreibt.
dates-day = d. MMMM y
