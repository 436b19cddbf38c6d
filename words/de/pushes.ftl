# Was einem Stoß oder einer Verwendung nicht standhält.
pushes-sideways = nach links oder rechts
pushes-fore-and-aft = nach vorn oder hinten
pushes-joints-alone = nur seine Verbindungen halten einem Stoß { $way } stand
pushes-tips = es kippt { $way }, bevor es den Stoß aufnimmt
pushes-slides = es rutscht { $way }, bevor es den Stoß aufnimmt
pushes-no-panel = keine seiner Flächen liegt waagerecht
pushes-too-much = es wird mehr verlangt, als seine Schätzungen erlauben
pushes-tips-middle = es kippt mit der Person in der Mitte
