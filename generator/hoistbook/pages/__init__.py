"""What every page says, one file for each kind; numbers and words made ready to print."""
