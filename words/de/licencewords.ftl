# Was eine Lizenz erlaubt.
licencewords-asks-nothing = Du darfst diese Dateien verwenden, teilen und ändern und verkaufen, was
    du daraus machst; verlangt wird nichts.
licencewords-asks-name = Du darfst diese Dateien verwenden, teilen und ändern und verkaufen, was du
    daraus machst, wenn du die Werkstatt nennst.
licencewords-asks-name-same = Du darfst diese Dateien verwenden, teilen und ändern und verkaufen,
    was du daraus machst, wenn du die Werkstatt nennst und deine Änderungen unter derselben Lizenz
    teilst.
licencewords-asks-no-profit = Du darfst diese Dateien ohne Gewinn teilen und ändern, wenn du die
    Werkstatt nennst; frag die Werkstatt, bevor du sie oder daraus Gemachtes verkaufst.
licencewords-asks-no-profit-same = Du darfst diese Dateien ohne Gewinn teilen und ändern, wenn du
    die Werkstatt nennst und deine Änderungen unter derselben Lizenz teilst; frag die Werkstatt, bevor du
    sie oder daraus Gemachtes verkaufst.
licencewords-asks-unchanged = Du darfst diese Dateien unverändert teilen und verkaufen, was du
    daraus machst, wenn du die Werkstatt nennst; geänderte Dateien (auch in anderen Größen) dürfen
    nicht geteilt werden.
licencewords-asks-unchanged-no-profit = Du darfst diese Dateien unverändert und ohne Gewinn teilen,
    wenn du die Werkstatt nennst; geänderte Dateien dürfen nicht geteilt werden; frag die Werkstatt, bevor
    du sie oder daraus Gemachtes verkaufst.
licencewords-asks-keep = Du darfst diese Dateien verwenden, teilen und ändern und verkaufen, was du
    daraus machst, wenn Lizenz und Hinweise bei den Dateien bleiben.
licencewords-asks-keep-share = Du darfst diese Dateien verwenden, teilen und ändern und verkaufen,
    was du daraus machst, wenn Lizenz und Hinweise bei den Dateien bleiben und du Änderungen an
    diesen Dateien unter derselben Lizenz teilst.
licencewords-asks-keep-built = Du darfst diese Dateien verwenden, teilen und ändern und verkaufen,
    was du daraus machst, wenn Lizenz und Hinweise bei den Dateien bleiben und du unter derselben
    Lizenz teilst, was du darauf aufbaust.
licencewords-asks-keep-say = Du darfst diese Dateien verwenden, teilen und ändern und verkaufen, was
    du daraus machst, wenn Lizenz und Hinweise bei den Dateien bleiben und du sagst, was du geändert
    hast.
licencewords-asks-keep-not-sold = Du darfst diese Dateien verwenden, teilen und ändern und
    verkaufen, was du daraus machst, wenn Lizenz und Hinweise bei den Dateien bleiben; die Dateien
    für sich dürfen nicht verkauft werden.
licencewords-asks-keep-changed = Du darfst diese Dateien verwenden, teilen und ändern und verkaufen,
    was du daraus machst, wenn Lizenz und Hinweise bei den Dateien bleiben und du geänderte Dateien
    unter derselben Lizenz teilst.
licencewords-called = Lizenz: { $licence }.
licencewords-none = Keine Lizenz ist angegeben: Frag die Werkstatt, bevor du etwas davon teilst oder
    daraus Gemachtes verkaufst.
licencewords-rules = Dieser Satz ist eine Zusammenfassung, keine Rechtsberatung; es gilt der Text
    der Lizenz.
licencewords-write = Schreib an { $maker }: { $address }
licencewords-by = { $plan }, von { $maker }.
