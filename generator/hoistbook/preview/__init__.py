"""The site as it will be, shown on this machine while the author writes."""
