# What a shop that cuts for others is sent and told.
shop-title = A shop cuts it for you
shop-ask = Ask for the thickness that the shop has measured, not for the name of the sheet: the
    files are for that.
shop-files = The { $formats } files of that thickness, in { $folder }.
shop-layouts = The layouts, in { $layouts }, and the setup sheets, in { $setup }.
shop-lines = The { $layers }: which line is cut how deep, and on which side.
shop-layers = list of layers
shop-saw = A shop that has only a saw needs the { $parts } and the saw sheets.
shop-parts = list of parts
