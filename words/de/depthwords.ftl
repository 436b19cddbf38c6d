# Wo z null ist und was Tiefen stimmen lässt.
depthwords-zero = Tisch unter der Platte
depthwords-why = Setz z null auf den Tisch, nicht auf die Fläche: Sonst bleibt eine Stelle, die
    { $unit ->
    [in] 1/64 in
   *[mm] 0,4 mm
 } dicker ist als der Rest, stehen.
depthwords-thickest = Gib deinem Programm den dicksten Messwert als Dicke der Platte; Tiefen zählen
    von dort nach unten.
depthwords-left = Was nicht durchgefräst wird, lässt einen Boden von { $floors }.
depthwords-engraved = Graviere für sich, mit z null auf der Fläche: Eine so flache Linie muss ihr
    folgen.
depthwords-bed = Fräse den Tisch zuerst plan und geh nicht tiefer hinein als angegeben. Eine Platte,
    die sich nach oben wölbt, wird auch in der Mitte gehalten, mit Schrauben im Abfall oder mit
    Vakuum: Sonst werden ihre Böden dünn.
