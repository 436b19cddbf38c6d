"""Kerfolio: proves, computes, draws and publishes plans for knock-down, sheet-goods projects."""
