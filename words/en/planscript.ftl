# What scripts of pages say: no choices in it, values alone.
planscript-found = { $found } of { $all } plans
planscript-none = No plan answers to all of this.
