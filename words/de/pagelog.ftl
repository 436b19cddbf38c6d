# Wörter der Seiten: log.
pagelog-title = Probeschnitte
pagelog-lead = Versuche und Arbeiten, wie sie im Logbuch stehen: die Einstellungen, mit denen gefräst wurde, und die Kante, die herauskam. Auch was misslang, steht hier.
pagelog-log = Das Logbuch
pagelog-caution = Einstellungen einer Maschine und einer Platte. Beginne auf deiner niedriger und halte dich an die Anleitungen von Maschine und Fräser.
pagelog-about = Versuche und Arbeiten bei { $house }: Einstellungen und Ergebnis.
