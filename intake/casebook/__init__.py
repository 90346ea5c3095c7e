"""Keeping cases safe on disk. All above speak to the seam `CaseBook`; `Book` is the embedded one."""

from intake.casebook.embedded import Book
from intake.casebook.error import BookError
from intake.casebook.files import LARGEST_FILE, file_mark
from intake.casebook.names import new_id
from intake.casebook.place import book_path
from intake.casebook.seam import CaseBook, Entry, Find, Forgotten, IndexRow

__all__ = [
    "LARGEST_FILE",
    "Book",
    "BookError",
    "CaseBook",
    "Entry",
    "Find",
    "Forgotten",
    "IndexRow",
    "book_path",
    "file_mark",
    "new_id",
]
