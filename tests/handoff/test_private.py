"""Personal data stay out of the hand-off, and figures stay in."""

import pytest

from intake.handoff.private import WITHHELD, Withholder
from intake.spec import Fact

CONTACT = [
    Fact(field="contact.name", value="Mira Oldcastle", said="Mira Oldcastle"),
    Fact(field="contact.email", value="mira@fennick.example", said="mira@fennick.example"),
]
SIZED = Fact(field="product.length", low=0.4, high=0.4, said="400 x 300 x 250 mm")


def test_contact_facts_are_shown_only_when_asked_for() -> None:
    assert [Withholder(CONTACT, allowed=yes).shows(CONTACT[0]) for yes in (False, True)] == [False, True]
    assert Withholder(CONTACT, allowed=False).shows(SIZED)


@pytest.mark.parametrize(
    "note",
    [
        "call mira oldcastle back",
        "write to other.person@fennick.example about samples",
        "her line is +44 1632 960 123",
        "phone (555) 010-4477 after four",
    ],
)
def test_names_mail_addresses_and_telephone_numbers_are_blanked_in_notes(note: str) -> None:
    blanked = Withholder(CONTACT, allowed=False).prose(note)
    assert WITHHELD in blanked
    assert not any(piece in blanked.lower() for piece in ("oldcastle", "@fennick", "960", "4477"))


@pytest.mark.parametrize(
    "words", ["400 x 300 x 250 mm", "16x12x10 in, 30 lb", "1200 480 3600", "from 30 to 168 in", "1,200,000 a year"]
)
def test_figures_in_a_facts_words_are_never_blanked(words: str) -> None:
    assert Withholder(CONTACT, allowed=False).words(words) == words


def test_everything_stands_when_contact_data_are_asked_for() -> None:
    note = "Mira Oldcastle, mira@fennick.example, 01632 960123"
    assert Withholder(CONTACT, allowed=True).prose(note) == note
