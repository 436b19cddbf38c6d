# Was Skripte der Seiten sagen: keine Auswahl darin, nur Werte.
truecut-long-slot = der lange Schlitz, gezeichnet { $drawn }
truecut-last-step = die letzte Stufe des Arms, gezeichnet { $drawn }
truecut-step = Schreib die Nummer einer Stufe, 1 bis { $count }.
truecut-takes-away = das, was er wegnimmt
truecut-really-cuts = das, was ein Fräser von { $cutter } wirklich schneidet
truecut-look = Sieh nach der Spannzange, dem Fräser selbst und der Einheit und schneide die Passprobe neu.
truecut-longer = Längen werden in { $axis } länger: zieh entlang jeder Achse eine Linie von 500 mm oder mehr, miss beide, und stell die Schritte pro Millimeter der falschen auf ihren Wert mal Soll durch Ist; such nach einem Riemen, der rutscht.
truecut-play-axis = Such nach Spiel in einer der Achsen: ein loser Riemen, eine Mutter, ein Ritzel, eine Schiene.
truecut-differs = Was er schneidet, unterscheidet sich zwischen x und y um { $by }. Das tut kein Fräser, also ist es die Maschine, und keine Datei behebt es. { $why }
truecut-inside-outside = Innen und außen unterscheiden sich um { $by }: ein Antrieb hat Spiel, der Fräser biegt sich, oder Stücke bewegen sich. Sieh nach Riemen und Muttern, halte die Platte nieder und lass ein paar Zehntel für einen letzten Durchgang ringsum.
truecut-built-cutter = Der Fräser von { $cutter } schneidet { $cut }. Das ist in diese Dateien eingerechnet: sag deinem Fräsbahn-Programm einen Fräser von { $cutter } und korrigiere sonst nichts.
truecut-built-kerf = Er nimmt { $cut } weg. Das ist in diese Dateien eingerechnet: sag deinem Programm keine Schnittfuge und korrigiere sonst nichts.
truecut-told-cutter = Der Fräser von { $cutter } schneidet { $cut }. Sag deinem Fräsbahn-Programm einen Fräser von { $cut } und korrigiere sonst nichts: in diese Dateien ist nichts eingerechnet.
truecut-told-kerf = Er nimmt { $cut } weg. Sag deinem Programm eine Schnittfuge von { $cut } und korrigiere sonst nichts: in diese Dateien ist nichts eingerechnet.
