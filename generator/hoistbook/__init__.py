"""hoistbook: from a folder of episodes to a published build journal."""

__version__ = "0.1.0"
