"""The sentences of doubts: why a reading was not taken, and the question to send back. Each with an id."""

from collections.abc import Mapping

_SENTENCES: Mapping[str, tuple[str, str]] = {
    "which_unit": ("a bare number that may be {units}", "Is {figure} in {units}?"),
    "unit_of_group": (
        "sizes without a unit",
        "Are those sizes ({said}) in inches, centimetres or millimetres?",
    ),
    "which_ton": ("a ton is 2,000 lb in one place and 1,000 kg in another", "Is {said} in US tons or metric tonnes?"),
    "which_scale": ("degrees without a scale", "Is {figure} degrees in Fahrenheit or Celsius?"),
    "hours_of_day": ("a figure per day without the hours of a day", "How many hours a day do you run to make {said}?"),
    "hours_of_shift": ("a figure per shift without its hours", "How many hours is a shift when you make {said}?"),
    "hours_of_shifts": ("shifts without their hours", "How many hours is each shift?"),
    "hours_of_week": ("a figure per week", "How many hours a week do you run to make {said}?"),
    "room_or_product": (
        "a temperature, of the room or of the product",
        "Is {said} the temperature of the room or of the product?",
    ),
    "weeks_until": ("a date, and no weeks from now", "How many weeks from today is that ({said})?"),
    "whose_weight": (
        "the weight of {outer} or of {inner}",
        "Is {said} the weight of the {outer} that travels, or of one {inner} in it?",
    ),
    "left_or_right": (
        "a quarter turn may go either way",
        "Seen in the direction of travel at the infeed: does it turn to the left or to the right?",
    ),
    "up_or_down": ("both directions are named", "Does product go up, down, or both ways on this machine?"),
    "which_travels": (
        "both {first} and {second} are named",
        "What rides on the machine itself: the {first} or the {second}?",
    ),
    "two_values": ("two different figures for one thing", "You gave {first} and {second}. Which of them holds?"),
    "feet_or_range": (
        "{said} may be feet and inches, or a range",
        "Is {said} feet and inches, or from one to the other?",
    ),
}


def sentence(id: str, said: str, words: Mapping[str, str]) -> tuple[str, str]:
    """Why, and the question back, with the visitor's words filled in."""
    why, ask = _SENTENCES[id]
    values = {name: value.replace("_", " ") for name, value in words.items()} | {"said": " ".join(said.split())[:80]}
    return why.format_map(values), ask.format_map(values)
