"""hoistbook: from a folder of episodes to a published build journal."""

import os

__version__ = "0.1.0"

# Linear algebra on several threads adds in another order on another machine, and the same journal
# must give the same bytes; at the size of our samples it is also slower. NumPy reads this once,
# when it is imported, so it stands before everything else.
os.environ["OPENBLAS_NUM_THREADS"] = "1"
