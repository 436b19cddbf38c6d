# Words of pages: steps.
pagesteps-title = Step by step
pagesteps-lead = Release { $release }. { $count ->
    [one] { $count } step
   *[other] { $count } steps
 }.
pagesteps-lead-tools = Release { $release }. { $count ->
    [one] { $count } step
   *[other] { $count } steps
 }; have at hand: { $tools }.
pagesteps-back = Back to { $step }
pagesteps-on = On to { $step }
pagesteps-to-plan = Back to the plan
pagesteps-head = { $plan }, step by step
pagesteps-about = How to put together { $plan }, release { $release }.
