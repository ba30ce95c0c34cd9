"""The cautions that the work calls for: their texts, the rules that owe them, the check."""
