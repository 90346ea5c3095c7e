"""Facts, fields and the case: what has been said. Knows nothing else of the program."""

from intake.spec.case import Case, fold
from intake.spec.events import Event
from intake.spec.facts import Doubt, Fact, Heard
from intake.spec.flat import Key, Spec, SpecError, Value
from intake.spec.folder import FolderError, demo_folder, questions_folder
from intake.spec.vocabulary import Field, field, nearest, vocabulary

__all__ = [
    "Case",
    "Doubt",
    "Event",
    "Fact",
    "Field",
    "FolderError",
    "Heard",
    "Key",
    "Spec",
    "SpecError",
    "Value",
    "demo_folder",
    "field",
    "fold",
    "nearest",
    "questions_folder",
    "vocabulary",
]
