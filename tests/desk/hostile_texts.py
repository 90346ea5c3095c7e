"""Texts that want to be more than text, and what must not be left of them anywhere."""

import unicodedata

from drawn import drawn
from hands import Hands
from rich.cells import cell_len

HOSTILE = {
    "markup": "[/] [red]x[/red] 12 [in] x 10 [in] [link=http://a.example]y[/link] \\[b]",
    "click": "[@click=app.quit]press[/] [@click='screen.dismiss']x[/]",
    "csi": "\x1b[2J\x1b[31mred\x1b[0m \x1b[?1049l \x1b[",
    "osc": "\x1b]52;c;SGVsbG8=\x07 \x1b]0;owned\x1b\\ \x1b]8;;http://a.example\x1b\\x\x1b]8;;\x1b\\",
    "dcs": "\x1bPq#0;2;0\x1b\\ \x1b_apc\x1b\\ \x1b^pm\x1b\\ \x1bX sos \x1b\\ \x1bc",
    "c1": "\x9b31m \x9d52;c;QQ==\x9c \x90q\x9c \x85next",
    "formula": '=HYPERLINK("http://a.example","x")\n@SUM(1)\n+1+2\n-3|cmd',
    "html": "<script>alert(1)</script><img src=x onerror=alert(1)> &lt; </td></table>",
    "bidi": "\u202eabc\u202c \u2066x\u2069 \u200fy\u061c",
    "hidden": "a\u200bb\u200dc\ufeff\u00add\u2060 \U000e0041",
    "combining": "e" + "\u0301" * 400,
    "rtl": "שלום 12 kg مرحبا بكم",
    "wide": "👩‍👩‍👧‍👦 🇩🇪 📦📦📦 漢字漢字 ﷽ ｆｕｌｌ",
    "tabs": "a\tb\t\t12 kg\tc",
    "surrogates": "\ud800 lone \udfff",
    "nul": "a\x00b\x07c\x08d\x7fe",
    "blanks": "{0} %s {fact.rise.height} $(id) `x` ${HOME}",
    "table": "| a | b |\n# head\n[x](http://a.example)",
}


def unsafe(text: str, allowed: str = "\n\t") -> set[str]:
    """Signs that a terminal or a page would obey, and halves of characters."""
    return {sign for sign in text if sign not in allowed and unicodedata.category(sign) in ("Cc", "Cf", "Cs", "Co")}


def check_frame(hands: Hands) -> None:
    """The frame is words only: no codes, nothing to click that a text brought, every row as wide as the screen."""
    assert hands.app.is_running, "the desk has ended"
    width = hands.app.size.width
    for row in drawn(hands.app):
        words = "".join(run.text for run in row)
        assert not unsafe(words, ""), repr(words)
        assert cell_len(words) == width, repr(words)
    for strip in hands.app.screen._compositor.render_strips():
        for segment in strip:
            assert segment.control is None, segment
            if segment.style is not None:
                assert segment.style.link is None, segment
                assert not [key for key in segment.style.meta if "click" in key], segment
