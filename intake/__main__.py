"""``python -m intake`` is the ``intake`` command."""

import sys

from intake.cli import main

sys.exit(main())
