"""Bad input as one line for a person: what is wrong, where, how to mend it. Every command exits 2 with it."""


class InputError(Exception):
    """What was given cannot be taken. The message is the whole line that the person reads."""
