# Was Platten messen.
measured-thick = { $figure } dick
measured-at = { $sheet } mit { $figure }
measured-sheets = Platten von { $figure } Dicke
