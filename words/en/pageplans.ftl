# Words of pages: plans.
pageplans-category = Kind
pageplans-tag = Tag
pageplans-level = How hard
pageplans-access = For whom
pageplans-open = open to all
pageplans-closed = for supporters
pageplans-any = any
pageplans-word = A word of it
pageplans-more = Show more plans
