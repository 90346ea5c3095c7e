"""A label and a word behind it: "invert: not permitted", "samples: yes", "frag = no", "Ex? no"."""

import re

from intake.reading.message.plain import plain
from intake.reading.message.scene import Draft, Scene

_LABELS: tuple[tuple[str, str], ...] = (
    ("handling.squeeze", r"side (?:pressure|grip\w*|force|load|clamp\w*|squeeze)|squeez\w+|sqz|grip(?:ping"
    r"|pable)?(?: sides?| from sides?)?|(?:lateral )?clamp(?:ing)?|hold(?:ing)? by (?:the )?sides?"),
    ("handling.invert", r"inver(?:t|sion|ting|tible)|turn(?:ing)? over|turned over|flip(?:ping|pable)?"
    r"|upside down|overturning|may be inverted"),
    ("handling.fragile", r"frag(?:ile|ility)?|breakable|delicate"),
    ("product.closed", r"closed|sealed|lid(?:s|ded)?|cover(?:ed)?|closure"),
    ("cleaning.exposed_food", r"(?:exposed|exp|open|unwrapped|bare|direct) (?:food|product)(?: contact)?"
    r"|food (?:contact|exposed|touches(?: belt| machine)?)|exposed"),
    ("site.hazardous_area", r"(?:ex|atex|hazardous|haz|classified|explosive|explosion)(?: - |/)?(?: ?(?:area"
    r"|zone|loc(?:ation)?|hazard|risk|class(?:ification)?|atmosphere))?|hazloc"),
    ("project.samples", r"(?:test )?(?:samples?|smpls?|pieces?)(?: available| possible| ok)?|test product"),
    ("site.air", r"(?:compressed |shop |plant )?air(?: supply| available)?|pneumatics?"),
    ("rate.backs_up", r"back ?- ?up|accumulation|accumulate|backs up"),
    ("product.wet", r"wet|wet product|product wet"),
    ("handling.turn_flat", r"turn flat|rotate|rotation"),
    ("handling.press_top", r"press(?:ing)? (?:on )?top|top pressure|top load"),
)  # fmt: skip
_YES = (
    r"yes|yep|yeah|y|ok|okay|okey|sure|fine|allowed|permitted|possible|available|true|acceptable|admissible"
    r"|no problem|yes please|of course|can be|approved"
)
_NO = (
    r"no(?! (?:limit|problem|idea))|nope|none|n|not (?:allowed|permitted|possible|ok|available|required"
    r"|applicable|present|admissible|acceptable|classified)|never|n / a|na|forbidden|prohibited|false|nil"
    r"|inadmissible|impossible|nothing|unclassified|non"
)
_LINE = re.compile(
    r"(?:^|(?<=[ ,;(\-|*]))(?:"
    + "|".join(f"(?P<k{n}>{label})" for n, (_, label) in enumerate(_LABELS))
    + rf")(?: \((?:[^()]{{1,30}})\))? ?(?P<sign>:|=|\?|\||\.\.+|-|–)[ :|.=\-]*(?P<value>(?P<yes>{_YES})"
    rf"|(?P<no>{_NO}))(?=$| ?[,.;:!()|\-/]| (?:and|but|up to|if|on|as|with|per|at|lightly|of|we|they|it|\d))"
)


def keyed_drafts(scene: Scene) -> list[Draft]:
    """Yes and no behind a label, as specifications have them."""
    if not any(sign in scene.shadow for sign in ":=?|-."):
        return []
    found: dict[str, Draft] = {}
    line = 0
    tokens = scene.tokens
    while line < len(tokens):
        end = line
        while end < len(tokens) and tokens[end].kind != "line":
            end += 1
        if end - line > 1:
            words = plain(scene, line, end)
            for match in _LINE.finditer(words.text):
                name = next(
                    _LABELS[int(key[1:])][0] for key, said in match.groupdict().items() if key[0] == "k" and said
                )
                first, last = words.token_at(match.start()), words.token_at(match.end("value") - 1)
                if scene.status[last] in ("quoted", "signed", "other", "supposed", "past") or name in found:
                    continue
                found[name] = Draft(
                    name, tokens[first].start, tokens[last].end, value=match["yes"] is not None, at=first, rank=2
                )
        line = end + 1
    return list(found.values())
