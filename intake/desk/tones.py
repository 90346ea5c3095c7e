"""How pieces of a message look: by underline, weight and reverse first, so that colour is never the only sign."""

from textual.content import Content

from intake.desk.lights import Lit, Tone

LOOKS: dict[Tone, str] = {
    "fact": "bold underline $ink-fact",
    "doubt": "bold reverse $ink-doubt",
    "unread": "italic $ink-doubt",
    "ask": "bold italic $ink-ask",
}
"""Understood, to be asked back, not used, a question of the visitor's own."""


def lit_content(lead: str, lit: Lit) -> Content:
    """The words with their lights, behind who said them. Nothing in the words is markup."""
    content = Content(lead + lit.words)
    for light in lit.lights:
        content = content.stylize(LOOKS[light.tone], len(lead) + light.start, len(lead) + light.end)
    return content
