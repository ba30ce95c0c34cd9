"""What an author writes in one string: quantities, money, names; each with its parser."""
