"""Laws are put to drawn values. A shared machine may be slow for a moment: no draw has a deadline."""

from hypothesis import settings

settings.register_profile("physics", deadline=None)
settings.load_profile("physics")
