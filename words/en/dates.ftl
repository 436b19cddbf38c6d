# A day, as CLDR writes patterns.
dates-day = d MMMM y
