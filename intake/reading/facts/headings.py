"""The turn in plan between infeed and discharge: clockwise from above, so right is 90 and left is 270."""

import re

from intake.reading.message.lexicon import SWALLOWED
from intake.reading.message.scene import Draft, Question, Scene

_TURNS = re.compile(
    r"\b(?:dir|plan|turn\w*|corner\w*|bend\w*|angle\w*|direction|heading|exit\w*|leav\w*|discharg\w*|out ?feed"
    r"|orientation|rotat\w*|come\w* (?:out|off)|goes? (?:out|off)|right|left|clockwise|layout|perpendicular"
    r"|go back|back|u"
    r"|opposite|straight)\b"
)
_LEFT = re.compile(r"\b(?:left|lh|l ?\. ?h|counter ?-?clockwise|anti ?-?clockwise|ccw)\b")
_RIGHT = re.compile(r"\b(?:rh|r ?\. ?h|(?<!that's )right(?! angle| away| now)|clockwise|cw)\b")
_ALLOWED = (0.0, 90.0, 180.0, 270.0, 360.0)


def heading_drafts(scene: Scene) -> list[Draft | Question]:
    """The turn as a fact, or the doubt whether left or right."""
    asked = "rise.turn" in scene.asked
    for figure in [*scene.open_figures("degrees"), *scene.open_figures("angle"), *scene.open_figures("number")]:
        text = scene.sentence_text(figure.first)
        if not (asked or _TURNS.search(text)) or re.search(
            r"\b(?:turned over|turn over|twist|flip\w*|invert\w*|slope|incline|tilt|steep|slid\w*|slip\w*"
            r"|tip\w*|temperature|temp)\b",
            text,
        ):
            continue
        value = figure.value % 360 if figure.value >= 0 else figure.value + 360
        if (
            figure.kind == "number"
            and not asked
            and not re.search(r"\bturn(?:ing|ed)?(?: of| by| is| :|:| it)* $", scene.before(figure) + " ")
        ):
            continue
        if value not in _ALLOWED or figure.is_range or (figure.kind == "number" and value == 0.0 and not asked):
            continue
        scene.use(figure)
        draft = scene.draft("rise.turn", figure)
        left, right = _LEFT.search(text), _RIGHT.search(text)
        if value == 90.0 and not (left or right):
            options = (
                Draft("rise.turn", draft.start, draft.end, 90.0, 90.0, at=draft.at),
                Draft("rise.turn", draft.start, draft.end, 270.0, 270.0, at=draft.at),
            )
            return [Question("rise.turn", draft.start, draft.end, "left_or_right", {}, options)]
        if left and value == 90.0 and not right:
            value = 270.0
        elif left and right:
            return []
        elif left and value == 270.0:
            value = 90.0
        draft.low = draft.high = value
        return [draft]
    return _right_angle(scene, asked) or _in_words(scene, asked)


_SQUARE_TURN = re.compile(r"\b(?:right angles?|quarter turn|perpendicular|square to|90)\b")


def _right_angle(scene: Scene, asked: bool) -> list[Draft | Question]:
    """ "At a right angle to the infeed, to the left": a quarter turn, left or right said or asked back."""
    for sentence in scene.sentences:
        if not scene.live(sentence.first) if sentence.first < len(scene.tokens) else True:
            continue
        text = scene.words(sentence.first, sentence.after)
        match = _SQUARE_TURN.search(text)
        if match is None or not (asked or _TURNS.search(text[: match.start()])):
            continue
        rest = text[: match.start()] + text[match.end() :]
        left, right = _LEFT.search(rest), _RIGHT.search(rest)
        first = sentence.first + text[: match.start()].count(" ")
        start, end = scene.tokens[first].start, scene.tokens[sentence.after - 1].end
        values = (270.0,) if left and not right else (90.0,) if right and not left else (90.0, 270.0)
        options = tuple(Draft("rise.turn", start, end, value, value, at=first) for value in values)
        if len(options) == 1:
            return [options[0]]
        return [Question("rise.turn", start, end, "left_or_right", {}, options)]
    return []


def _in_words(scene: Scene, asked: bool) -> list[Draft | Question]:
    hits = [hit for hit in scene.hits if hit.field == "rise.turn" and hit.value != SWALLOWED and scene.live(hit.first)]
    best = sorted(hits, key=lambda hit: -hit.weight)
    for hit in best:
        text = scene.sentence_text(hit.first)
        words = scene.words(hit.first, hit.after)
        if not asked and (hit.weight < 2 or words in ("come back", "return same side")):
            continue
        if (
            not asked
            and not re.search(r"^u|hairpin|switchback|same (?:way|side)|way (?:it|they) came", words)
            and not re.search(
                r"\b(?:discharge|out ?feed|exit|leave|turn|come (?:out|off)|direction|continue|bend|straight"
                r" (?:on|through|ahead|shot|line)|infeed|hand)\b",
                text,
            )
        ):
            continue
        others = {other.value for other in hits if other.weight >= hit.weight}
        if len(others) > 1 and not (others == {"0", "180"} and hit.value == "180"):
            return []
        before = scene.words(max(scene.sentence_of(hit.first).first, hit.first - 3), hit.first)
        if re.search(r"\b(?:not|no|never|don't|can't|isn't)\b", before) and hit.value != "0":
            continue
        value = float(hit.value)
        start, end = scene.tokens[hit.first].start, scene.tokens[hit.after - 1].end
        return [Draft("rise.turn", start, end, value, value, at=hit.first)]
    return []
