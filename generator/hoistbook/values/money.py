"""Amounts of money in a currency; always Decimal, never a float."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal


@dataclass(frozen=True, slots=True)
class Money:
    """An amount in a currency named by its ISO 4217 code."""

    amount: Decimal
    currency: str
