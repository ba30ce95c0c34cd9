"""Numbers with a past: what is worked out of each state, with its band and its evidence."""
