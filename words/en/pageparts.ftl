# Words of pages: parts.
pageparts-table = Table
pageparts-table-of = Table: { $heads }
pageparts-for = For { $plan }
