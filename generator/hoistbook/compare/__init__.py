"""What needs figures of more than one state: claims at their conditions, expected and got."""

from hoistbook.compare.claims import claim_verdicts
from hoistbook.compare.expected import comparisons

__all__ = ["claim_verdicts", "comparisons"]
