# Releases of a plan.
releases-title = Releases
releases-correction = Correction: files before this release were wrong
