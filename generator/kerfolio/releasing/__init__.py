"""What changed between releases, and what of it must be cut anew."""
