"""Tests of the room `commands`."""
