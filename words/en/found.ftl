# The steps of an order that was worked out.
found-order = This order was worked out from the joints: each piece comes home along a straight line. The
  maker has not written the steps down; look at each picture before you push.
found-set-down = Set down { $pieces }
found-push-down = push { $pieces } down, from above
found-push-up = push { $pieces } up, from below
found-push-left = push { $pieces } on from the left
found-push-right = push { $pieces } on from the right
found-push-front = push { $pieces } on from the front
found-push-behind = push { $pieces } on from behind
found-more = { $count } more
