# What scripts of pages say: no choices in it, values alone.
viewscript-step = Step { $step } ({ $pieces })
viewscript-step-title = Step { $step }: { $title } ({ $pieces })
viewscript-finished = Finished
viewscript-joins = step { $step } { $title }
