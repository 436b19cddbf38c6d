# Der Feed der Ausgaben.
feed-release = { $plan } { $release }
feed-correction = { $plan } { $release }, eine Korrektur
