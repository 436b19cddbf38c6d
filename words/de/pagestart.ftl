# Wörter der Seiten: start.
pagestart-title = Hier anfangen: { $plan } { $release }
pagestart-kicker = Hier anfangen
pagestart-report = { $link }. Sag, welche Ausgabe, welches Teil (sein Zeichen), und wie dick deine Platte ist.
pagestart-report-mail = { $link }, oder schreib an { $mail }. Sag, welche Ausgabe, welches Teil (sein Zeichen), und wie dick deine Platte ist.
pagestart-later = Sieh vor dem Schneiden nach, ob eine spätere Ausgabe diese, { $release }, berichtigt: { $link }. Ohne Netz sieh später nach: was von früheren Ausgaben bekannt war, steht { $here }.
pagestart-here = auf dieser Seite
pagestart-none-later = Diese Seite kennt keine spätere Ausgabe als { $release }.
pagestart-none-later-ask = Diese Seite kennt keine spätere Ausgabe als { $release }. Frag vor dem Schneiden { $maker } nach Korrekturen: { $link }.
pagestart-looking = Alles steht der Reihe nach im Bauheft, { $papers }.
