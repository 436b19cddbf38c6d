# What sheets measure.
measured-thick = { $figure } thick
measured-at = { $sheet } at { $figure }
measured-sheets = sheets { $figure } thick
