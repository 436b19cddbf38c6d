"""From a drawing of a whole project to a plan."""
