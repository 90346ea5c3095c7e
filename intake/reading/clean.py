"""Text from outside made safe to keep and to show: used at the program's edges, never inside reading."""

import re
import unicodedata

_SEQUENCES = re.compile(
    r"(?:\x1b\[|\x9b)[0-?]*[ -/]*[@-~]"
    r"|(?:\x1b\]|\x9d)[^\x07\x1b\x9c\n]{0,4096}(?:\x07|\x1b\\|\x9c)"
    r"|\x1b[PX^_][^\x1b\n]{0,4096}\x1b\\"
)
_DROPPED = re.compile(
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb"
    "\ud800-\udfff\U000e0000-\U000e007f]"
)


def clean(text: str, limit: int = 20_000) -> str:
    """The text without terminal sequences, control and direction codes, cut at `limit` characters, in NFC.

    Tabs and line ends stay (as "\\n"). An unfinished sequence loses its escape code only, not the visitor's words.
    Whoever calls says so on screen when something was cut.

    >>> clean("12 in\\x1b[31m wide\\r\\n")
    '12 in wide\\n'
    """
    cut = text[:limit].replace("\r\n", "\n").replace("\r", "\n")
    return unicodedata.normalize("NFC", _DROPPED.sub("", _SEQUENCES.sub("", cut)))
