# Was vor allen Kapiteln steht.
opening-wrong = Dateien aus der Zeit vor Ausgabe { $version } ({ $day }) waren falsch. { $changed }
opening-whose = Entworfen von { $maker }. Ausgabe { $version }, { $day }.
