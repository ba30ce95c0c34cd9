"""The safety notices that the work of a page calls for: their texts and their rules."""
