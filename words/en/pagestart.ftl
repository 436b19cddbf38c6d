# Words of pages: start.
pagestart-title = Start here: { $plan } { $release }
pagestart-kicker = Start here
pagestart-report = { $link }. Say which release, which part (its mark), and how thick your sheet is.
pagestart-report-mail = { $link }, or write to { $mail }. Say which release, which part (its mark), and how thick your sheet is.
pagestart-later = Before you cut, see whether a later release corrects this one, { $release }: { $link }. Without a network, see there later: what was known of earlier releases is { $here }.
pagestart-here = in this page
pagestart-none-later = This page knows no release later than { $release }.
pagestart-none-later-ask = This page knows no release later than { $release }. Before you cut, ask { $maker } for corrections: { $link }.
pagestart-looking = It is all in the booklet, in order, { $papers }.
