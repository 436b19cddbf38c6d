# Words of pages: parts.
pageparts-table = Table
pageparts-table-of = Table: { $heads }
pageparts-instead = In place of a photograph: { $made }.
pageparts-for = For { $plan }
pageparts-outcome = { $outcome ->
    [clean] Clean
    [light-fuzz] Light fuzz
    [fuzz-to-sand] Fuzz to sand
    [chipped] Chipped
    [burned] Burned
   *[other] { $outcome }
 }
