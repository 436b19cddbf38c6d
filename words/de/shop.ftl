# Was ein Betrieb bekommt, der für andere schneidet.
shop-title = Ein Betrieb schneidet für dich
shop-ask = Frag nach der Dicke, die der Betrieb gemessen hat, nicht nach dem Namen der Platte: Die
    Dateien sind für diese Dicke.
shop-files = Die Dateien für diese Dicke ({ $formats }), in { $folder }.
shop-layouts = Die Legepläne, in { $layouts }, und die Einrichtblätter, in { $setup }.
shop-lines = Die { $layers }: welche Linie wie tief und auf welcher Seite geschnitten wird.
shop-layers = Liste der Ebenen
shop-saw = Einem Betrieb, der nur eine Säge hat, genügen die { $parts } und die Sägepläne.
shop-parts = Liste der Teile
