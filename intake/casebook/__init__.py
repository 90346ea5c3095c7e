"""Keeping cases safe on disk. All above speak to the seam `CaseBook`; `Book` is the embedded one."""

from intake.casebook.embedded import Book
from intake.casebook.error import BookError
from intake.casebook.names import new_id
from intake.casebook.place import book_path
from intake.casebook.seam import CaseBook, Entry, IndexRow

__all__ = ["Book", "BookError", "CaseBook", "Entry", "IndexRow", "book_path", "new_id"]
