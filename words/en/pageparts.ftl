# Words of pages: parts.
pageparts-table = Table
pageparts-table-of = Table: { $heads }
pageparts-instead = In place of a photograph: { $made }.
pageparts-for = For { $plan }
