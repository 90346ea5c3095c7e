"""Lines of a log that nobody said: who came and went, notes of the program, dates between messages."""

import re

from intake.reading.thread.stamps import DATE, IN_BRACKETS

_WHO = r"(?:[^\n:;,!?]{1,60})"
_CAME_AND_WENT = re.compile(
    rf"(?:{_WHO} (?:has |have )?(?:just )?(?:joined|left|entered|exited"
    rf"|rejoined)(?: (?:the|this) (?:chat|conversation|room"
    r"|call|session|meeting|thread|group|channel)| (?:the )?(?:chat|conversation))?"
    rf"|{_WHO} (?:has |have )?(?:(?:was|were|been|is) )?(?:added|removed|invited|assigned|connected|disconnected"
    rf"|transferred)(?: (?:to|from|by|into|as)\b[^\n]{{0,60}})?"
    rf"|{_WHO} (?:has )?(?:ended|closed|started|opened|accepted|requested|resolved|picked up|taken over|took over)"
    r" (?:the |this |a )?(?:chat|conversation|session|call|ticket)"
    rf"|{_WHO} (?:added|invited|removed) {_WHO}(?: to the (?:chat|conversation|group))?"
    rf"|{_WHO} (?:is|are|was) (?:now )?(?:typing|online|offline|away|waiting)(?: in (?:the )?(?:queue|line))?"
    rf"|(?:you are|you're) (?:now )?(?:connected|chatting|speaking|talking)(?: (?:to|with) {_WHO})?"
    rf"|(?:connecting you|transferring|transferred|please wait|connected)\b[^\n:]{{0,60}})"
    r"(?:\s*(?:at|\()?\s*\d{1,2}[:.]\d\d(?::\d\d)?\s*(?:[ap]m)?\)?)?[\s.!…]*",
    re.IGNORECASE,
)
_SURE_OF = re.compile(
    r"\b(?:chat|conversation|typing|offline|chatting (?:to|with)|speaking (?:to|with))\b", re.IGNORECASE
)
_PERSON = re.compile(
    r"(?!(?:They|We|I|It|He|She|You|The|These|Those|Some|All|Product|Products|Cases|Boxes)\b)"
    r"(?:[^\W\d_a-z][\w.'’-]*|(?i:agent|visitor|customer|guest|operator)(?: #?\d+)?)"
    r"(?: [^\W\d_a-z][\w.'’-]*){0,3}(?: \([^()\n]{1,30}\))? (?:has |have |just |is |was |are |now |been )*"
    r"(?:joined|left|entered|exited|rejoined|added|invited|assigned|connected|disconnected|transferred|online|away)\b"
)
"""Only of people it is said so without a word of the chat: "two pallets left" is about pallets."""
_PROGRAM = re.compile(
    r"(?:(?:live )?(?:chat|conversation|session|call|transcript"
    r"|messages?)(?: (?:has|was|is|log|transcript|history|id|session"
    r"|window|export))*"
    r"(?: (?:been )?(?:started|ended|begins?|begun|closed|transferred|opened|resolved|over|resumed|archived"
    r"|inactive|timed out))?(?: (?:by|on|at|with|from|due to|of)\b[^\n]{0,80})?"
    r"|(?:start|end|beginning|begin) of (?:the )?(?:chat|conversation|transcript|log|thread|messages?)[^\n]{0,60}"
    r"|end of (?:chat|conversation) transcript"
    r"|(?:chat|conversation) transcript\b[^\n]{0,80}"
    r"|messages (?:and calls )?are end-to-end encrypted[^\n]{0,120}"
    r"|<?(?:media|image|video|audio|sticker|gif|document|attachment|file)s? (?:omitted|attached|sent|removed)>?"
    r"|this message was (?:deleted|edited|removed)|(?:seen|delivered|read|sent"
    r"|edited)(?: (?:at )?[\d:. ]{3,8}(?:[ap]m)?)?"
    r"|new messages?|unread messages?|\(edited\)|waiting for (?:an? )?(?:agent|operator|reply)[^\n]{0,40}"
    r"|(?:wait|waiting|response|handle|chat) (?:time|duration)[^\n]{0,40})[\s.!…]*",
    re.IGNORECASE,
)
_FRAME = re.compile(r"^[\s*=_~#|<>\[\](){}•·.-]+|[\s*=_~#|<>\[\](){}•·-]+$")
_RULE = re.compile(r"\s*[-=_*~#•·—–]{3,}\s*")
_DAYS = r"(?:(?:mon|tues|wednes|thurs|fri|satur|sun)day|today|yesterday)"
_DATE_LINE = re.compile(rf"(?:{_DAYS},?\s+)?(?:{DATE}|{_DAYS})\.?", re.IGNORECASE)
_LEADING_STAMP = re.compile(rf"^\s*[\[(]?{IN_BRACKETS}[\])]?\s*[-–—:|]?\s+", re.IGNORECASE)
SYSTEM_NAMES = frozenset(
    ["system", "system message", "notification", "notice", "info", "chat", "status", "event", "automatic message"]
)
"""Labels under which a chat program itself speaks."""


def is_rule(line: str) -> bool:
    """True for a line of nothing but dashes, stars and the like."""
    return len(line) < 200 and _RULE.fullmatch(line) is not None


def is_notice(line: str) -> bool:
    """True for a line that a chat program wrote about the chat itself.

    >>> is_notice("-- Chat ended --"), is_notice("Ann joined the chat"), is_notice("two weeks left")
    (True, True, False)
    """
    if len(line) > 200 or not line.strip():
        return False
    if is_rule(line):
        return True
    bare = _FRAME.sub("", _LEADING_STAMP.sub("", line))
    framed = bare != line.strip(" .!…") and line.strip()[:1] in "-=*~#<[("
    if _PROGRAM.fullmatch(bare):
        return True
    if not _CAME_AND_WENT.fullmatch(bare):
        return False
    return framed or _SURE_OF.search(bare) is not None or _PERSON.match(bare) is not None


def is_date_line(line: str) -> bool:
    """True for a line that is a date or a day and nothing else.

    >>> is_date_line("--- Monday, 2 March 2026 ---"), is_date_line("2 March is fine")
    (True, False)
    """
    return len(line) < 80 and _DATE_LINE.fullmatch(_FRAME.sub("", line)) is not None


def is_framed(line: str) -> bool:
    """True where dashes or the like stand on both sides of the words."""
    bare = line.strip()
    return len(bare) > 4 and bare[0] in "-=*~_—–[#" and bare[-1] in "-=*~_—–]#"


def is_edited_mark(text: str) -> bool:
    """True for what a program hangs behind a message: "(edited)"."""
    return _PROGRAM.fullmatch(text.strip()) is not None
