# Was das Skript sagt, das ein versiegeltes Paket öffnet: ohne Auswahl, nur Werte.
unsealscript-opening = Wird geöffnet. Das dauert einige Sekunden.
unsealscript-saved = Geöffnet und vollständig: { $name } ist gespeichert.
unsealscript-empty = Tippe zuerst den Schlüssel ein.
unsealscript-key = Der Schlüssel öffnet dieses Paket nicht. Such nach einem Tippfehler; ist da keiner, wurde er vielleicht zurückgezogen: frag nach einem neuen. Nichts wurde gespeichert.
unsealscript-count = Der Schlüssel öffnet dieses Paket nicht: er hat sieben Wörter, getippt hast du { $count }. Nichts wurde gespeichert.
unsealscript-none = Was geladen wurde, ist kein versiegeltes Paket. Sag es der Werkstatt. Nichts wurde gespeichert.
unsealscript-version = Das Paket ist in Form { $version } versiegelt, die diese Seite nicht kennt. Lade die Seite neu. Nichts wurde gespeichert.
unsealscript-head = Der Kopf des versiegelten Pakets ist beschädigt. Sag es der Werkstatt. Nichts wurde gespeichert.
unsealscript-short = Das versiegelte Paket ist abgeschnitten. Versuch es noch einmal; bleibt es dabei, sag es der Werkstatt. Nichts wurde gespeichert.
unsealscript-longer = Das versiegelte Paket ist länger, als es angibt. Sag es der Werkstatt. Nichts wurde gespeichert.
unsealscript-damaged = Das versiegelte Paket ist beschädigt, in Stück { $number } von { $chunks }. Versuch es noch einmal; bleibt es dabei, sag es der Werkstatt. Nichts wurde gespeichert.
unsealscript-fetched = Das versiegelte Paket ließ sich nicht laden. Sieh nach, ob du verbunden bist, und versuch es noch einmal. Nichts wurde gespeichert.
unsealscript-unnamed = Du hast keine Datei benannt. Nichts wurde gespeichert.
unsealscript-trouble = Es ließ sich nicht öffnen: { $trouble }. Nichts wurde gespeichert.
unsealscript-plain = Diese Seite kam nicht über https, und ohne das öffnet ein Browser kein Siegel. Lade das versiegelte Paket und öffne es wie unten gesagt.
unsealscript-disk = Diese Seite liegt auf einem Datenträger, wo ein Browser keine andere Datei liest. Öffne das versiegelte Paket wie unten gesagt.
