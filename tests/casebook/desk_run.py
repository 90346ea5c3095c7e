"""A desk without a screen, as a program of its own: notes into a case that others write to, and into one of its own.

Arguments: name of this desk, how many notes. INTAKE_BOOK names the book. Prints what could not be kept.
"""

import sys

from intake.desk.keeping import Keeper
from intake.talk import Interview


def main(name: str, notes: int) -> None:
    """Note so many things, each kept before the next in both cases."""
    shared, own = (Interview(), Keeper("shared")), (Interview(), Keeper(f"of_{name}"))
    for number in range(notes):
        for talk, keeper in (shared, own):
            talk.note(f"{name} {number}")
            tries = 0
            while (trouble := keeper.keep(talk)) is not None:  # others came in between: it is tried again
                tries += 1
                if tries > 50:
                    sys.exit(f"{name} {number}: {trouble}")
        keeper.book.keep_draft(f"of_{name}", f"half-typed {number}")
        if number % 10 == 0:
            shared[1].news(shared[0])


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]))
