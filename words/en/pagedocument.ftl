# Words of pages: document.
pagedocument-pictures = { $count } pictures, side by side
pagedocument-slides = Drawing, slides sideways
pagedocument-slide = Slide sideways for more
pagedocument-large = Open large
pagedocument-caution = Caution
pagedocument-by-hand = By hand:
pagedocument-chapters = Chapters
pagedocument-path = Choose your path
pagedocument-then = Then: { $chapters }
pagedocument-this-plan = For this plan
pagedocument-unit = Unit
pagedocument-inches = inches
