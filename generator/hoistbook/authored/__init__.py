"""All reading: everything the author writes becomes records, or problems with their places."""

from hoistbook.authored.journal import Read, read_journal

__all__ = ["Read", "read_journal"]
