"""What the desk says before anybody has said anything, and a sample conversation to try it with."""

from collections.abc import Sequence

WELCOME = (
    "Paste what the visitor wrote, or type while listening. What is understood lights up in the words; Enter takes it.",
    "The next question then stands ready to be sent: Ctrl+Y copies it. Machines and facts stand beside it.",
    "First time here? Tab puts a sample on the line, Enter sends it, Tab again the next one. F1 is help.",
)

SAMPLE = (
    "Hi, we make oat drink and need to get shrink-wrapped trays, 400 x 300 x 200 mm, 9 kg, up to a mezzanine. "
    "About 25 a minute, 32 at peak. They come in at 0.8 m and leave at 4.2 m.",
    "It is wiped down once a shift, in a normal room, no explosion hazard.",
    "They leave straight on. There is a corner of 4 x 2.5 m on the floor, and 6 m to the beams.",
    "The trays are flat underneath, and nobody has to pass below. How high could it go at most?",
    "Sorry, 36 a minute at peak.",
)
"""What a visitor of our own making says, message by message, whatever is asked in between."""


def next_sample(said: Sequence[str]) -> str | None:
    """The next message of the sample, where all that was said so far is the beginning of it; else None."""
    if tuple(said) == SAMPLE[: len(said)] and len(said) < len(SAMPLE):
        return SAMPLE[len(said)]
    return None
