"""Everything between the rendered pages and the disk: the tree, its checks, the exchange."""
