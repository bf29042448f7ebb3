"""``python -m nearhand``: the same as the command ``nearhand``."""

import sys

from nearhand.cli import main

sys.exit(main())
