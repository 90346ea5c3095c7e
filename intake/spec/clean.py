"""Text from outside made safe to show: no control codes, no hidden or direction-changing characters."""

import re
import unicodedata

LONGEST = 20_000
"""Characters of one message that are kept; callers say so when something was cut."""

# Whole terminal sequences go with their parameters: CSI, OSC, and DCS/PM/APC strings.
_SEQUENCE = re.compile(
    r"(?:\x1b\[|\x9b)[0-?]*[ -/]*[@-~]"
    r"|(?:\x1b\]|\x9d)[^\x07\x1b\x9c\n]{0,4096}(?:\x07|\x1b\\|\x9c)"
    r"|\x1b[PX^_][^\x1b\n]{0,4096}\x1b\\"
)
# Controls but tab and newline, soft hyphens, zero-width and direction marks, lone surrogates, tag characters.
_HIDDEN = re.compile(
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f"
    "\ufeff\ufff9-\ufffb\ud800-\udfff\U000e0000-\U000e007f]"
)


def clean(text: str, limit: int = LONGEST) -> str:
    """The words of `text` without anything that a terminal or a page would obey.

    An unfinished sequence loses only its escape sign, not the words after it. Newlines become "\\n";
    the result is in Unicode form C and at most `limit` characters of the text are kept.

    >>> clean("12\\x1b[31m in\\r\\n")
    '12 in\\n'
    """
    kept = text[:limit].replace("\r\n", "\n").replace("\r", "\n")
    return unicodedata.normalize("NFC", _HIDDEN.sub("", _SEQUENCE.sub("", kept)))


def one_line(text: str, limit: int = LONGEST) -> str:
    """The same on one line: newlines and tabs become spaces."""
    return " ".join(clean(text, limit).split())
