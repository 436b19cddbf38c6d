# Wo eine Platte gemessen wird und welche Dateien das bedeutet.
measure-title = Miss deine Platte
measure-open = Öffne { $start }, auf einem Rechner oder Telefon, ganz ohne Netz, und tippe deine Messwerte ein:
    Die Seite macht die Dateien für genau deine Platte.
measure-coupon-first = Schneide die { $coupon } vor allem anderen.
measure-coupon = Passprobe
measure-folders = Ordner mit Schnittdateien, nach gemessener Dicke
measure-folder = Ordner
measure-fit = Passung auf jeder Seite
measure-others = Andere Platten und Tische
measure-others-lie = Der Plan ist auch für andere Platten und Tische ausgelegt: Dateien ihrer
    Platten liegen in einem Ordner neben den anderen, und die der Teile gelten für alle.
measure-other = { $sheet }: { $takes }, in { $folder }
measure-joints = Passung der Verbindungen
measure-damp = { $care } machen Stücke dicker. { $room }
measure-care = Oberfläche und Feuchte
