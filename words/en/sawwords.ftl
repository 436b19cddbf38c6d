# How saw sheets are read, and what to mind at the saw.
sawwords-how = Set the fence once for all cuts of a row, then make them in order. Lay pieces as they
    lie in the picture: a rip is measured from the lower edge, a cross-cut from the left one, and
    the kerf is taken beyond the size. A trim takes its size off the edge, the kerf in it.
sawwords-caution = Guard and riving knife on, push sticks at hand; never the fence and the mitre
    gauge for one cut. Cut large sheets with a track and with help, and short or narrow pieces with
    a sled or by hand. The manual of the saw, local rules and licensed practice come first.
sawwords-spare = Shaped parts are sawn as blanks with { $spare } to spare, and shaped by their
    templates.
