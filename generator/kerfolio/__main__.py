"""Runs the command line as ``python -m kerfolio``."""

from kerfolio.cli import main

if __name__ == "__main__":
    main()
