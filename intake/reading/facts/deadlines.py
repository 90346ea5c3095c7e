"""A date by which the machine is needed: asked back in weeks, since reading keeps no calendar."""

import re

from intake.reading.message.scene import Question, Scene

_MONTH = (
    r"(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?"
    r"|nov(?:ember)?|dec(?:ember)?)\b\.?"
)
_YEAR = r"(?:,? ?(?:19|20)\d\d)?"
_DATE = re.compile(
    rf"\b(?:(?:the )?\d{{1,2}}(?:st|nd|rd|th)?\.? (?:of )?{_MONTH}{_YEAR}|{_MONTH} \d{{1,2}}(?:st|nd|rd|th)?\b{_YEAR}"
    rf"|(?:the )?(?:end|middle|start|beginning|early|mid|late|first week|last week)[ -](?:of |in )?(?:the )?"
    rf"(?:{_MONTH}{_YEAR}|(?:this |next )?(?:year|quarter|month|spring|summer|fall|autumn|winter)|q[1-4])"
    rf"|q[1-4](?:[ /,-]*(?:of )?(?:20)?\d\d)?\b|(?:calendar )?(?:week|wk|kw|cw) ?\d{{1,2}}(?=[ ,.]|$)"
    rf"|\d{{1,2}}[./-]\d{{1,2}}[./-](?:20)?\d\d\b|20\d\d-\d\d-\d\d"
    rf"|(?<![-\d] )(?<![-\d])\d{{1,2}}/\d{{1,2}}(?![/\d\"'])(?! ?[lwhx\"])|{_MONTH}{_YEAR}"
    r"|(?:next |this )?(?:spring|summer|fall|autumn|winter|christmas|easter|thanksgiving|new year)(?:'s)?"
    r"(?: break| shutdown)?)"
)
_NEED = re.compile(
    r"\b(?:by|before|until|till|no later than|not later than|latest|needed|need (?:it|this|one|them)|due|deliver\w*"
    r"|deadline|install\w*|start ?-?up|go(?:es|ing)? live|commission\w*|running (?:by|in)|in place|ready"
    r"|on site|ship)\b"
    r"[^.;?!\n]{0,40}$"
)
_OF_A_RATE = re.compile(
    r"(?:/ ?(?:min|h|hr|hour|day)|\b(?:a|per|an) (?:minute|min|hour|day)"
    r"|[cbp]pm)\W+(?:\w+ ){0,2}(?:by|before|until) $"
)
_NO_NEED = re.compile(r"\b(?:met|spoke|talk\w*|call\w*|quote\w*|budget|meeting|board|holiday|vacation|born|built|po)\b")


def deadline_questions(scene: Scene, said: bool) -> list[Question]:
    """The first date that says when the machine is needed, as a question; none where weeks are said."""
    if said:
        return []
    asked = "project.weeks" in scene.asked
    for match in _DATE.finditer(scene.shadow[:20_000]):
        at = scene.token_at(match.start())
        if at is None or not scene.live(at):
            continue
        lead = scene.shadow[max(0, match.start() - 60) : match.start()]
        if (
            _OF_A_RATE.search(lead)
            or _NO_NEED.search(re.split(r"[.;?!\n]", lead)[-1])
            or not (asked or _NEED.search(lead))
        ):
            continue
        if match.group() == "may" and not re.search(r"\b(?:by|in|before|until) $", lead):
            continue
        return [Question("project.weeks", match.start(), match.end(), "weeks_until")]
    return []
