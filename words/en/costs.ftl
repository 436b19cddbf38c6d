# What one copy costs, and several.
costs-title = Costs
costs-one = One { $copy }, in { $currency }
costs-several = Several { $copies }, in { $currency }
costs-count = Count
costs-what = What
costs-sheets = Sheets
costs-each = Each
costs-together = Together
costs-in-all = In all
costs-own-prices = The maker’s own prices; yours will differ.{ $unknown ->
    [0] {""}
    [one] {" "}No price is known for { $unknown } line of the list.
   *[other] {" "}No price is known for { $unknown } lines of the list.
 }
costs-machine-time = Machine time
