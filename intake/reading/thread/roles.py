"""Which side the words of a label name: "Visitor 12", "Bob (Sales)", "Customer service"."""

import re
from typing import Literal

Role = Literal["visitor", "staff", "self"]

_VISITOR = frozenset(
    [
        "visitor", "visitors", "customer", "client", "guest", "prospect", "caller", "user", "buyer", "enquirer",
        "inquirer", "shopper", "lead", "anonymous", "kunde", "besucher",
    ]
)  # fmt: skip
_STAFF = frozenset(
    [
        "agent", "support", "sales", "staff", "desk", "showroom", "operator", "rep", "representative",
        "advisor", "adviser", "assistant", "bot", "chatbot", "helpdesk", "service", "team", "host", "seller",
        "vendor", "consultant", "specialist", "reception", "receptionist", "moderator", "admin", "salesperson",
        "salesman", "saleswoman", "helpline", "hotline", "supplier", "manufacturer", "expert", "applications",
        "engineering", "vertrieb", "berater",
    ]
)  # fmt: skip
_HOUSES = frozenset(
    [
        "agent", "support", "sales", "desk", "showroom", "assistant", "bot", "chatbot", "helpdesk", "service",
        "team", "reception",
    ]
)  # fmt: skip
"""Behind another word too they name the staff ("Rise Showroom"); the rest may be somebody's last name there."""
_SELF = frozenset(["you", "me", "i", "myself", "ich"])
_OF_STAFF = re.compile(
    r"\b(?:customer|client|user|visitor|guest|buyer) (?:service|support|care|success|relations|rep|agent|services"
    r"|advisor|representative|experience|desk|team)\b|\b(?:help|front|sales|support|service|info) ?desk\b"
    r"|\b(?:sales|support|service|application|applications|project|field) (?:engineer|engineering|team|rep|agent"
    r"|manager|advisor|department|dept)\b|\b(?:virtual|digital|online|live) (?:assistant|agent|advisor)\b"
)
_WEB_VISITOR = re.compile(r"\b(?:web|website|site|online|chat|new|returning) (?:visitor|user|customer|guest)\b")
_PARTED = re.compile(r"\s*[(\[|/,@–—]\s*|\s+-\s+|\s+from\s+|\s+at\s+|:\s*")
_NUMBER = re.compile(r"\s*#?\d+$")


def role_of(label: str) -> Role | None:
    """The side that a label tells by itself; None where it is a name or anything else.

    >>> role_of("Visitor 4821"), role_of("Bob (Sales)"), role_of("Customer service"), role_of("Ann Guest")
    ('visitor', 'staff', 'staff', None)
    """
    words = " ".join(label.casefold().replace("_", " ").split()).strip(" .)]*")
    if _OF_STAFF.search(words):
        return "staff"
    if _WEB_VISITOR.search(words):
        return "visitor"
    parts = [part for part in _PARTED.split(words) if part]
    for part in [*parts[1:], *parts[:1]]:
        found = _of_part(_NUMBER.sub("", part), whole=part is not parts[0] or len(parts) > 1)
        if found is not None:
            return found
    return None


def _of_part(part: str, whole: bool) -> Role | None:
    tokens = part.strip(" )]").split()
    if not tokens or len(tokens) > 4:
        return None
    if len(tokens) == 1 and tokens[0] in _SELF:
        return "self"
    named = [tokens[0], *(tokens[-1:] if whole and len(tokens) < 4 else ())]
    if any(token in _STAFF for token in named) or tokens[0] in ("our", "us") or tokens[-1] in _HOUSES:
        return "staff"
    return "visitor" if any(token in _VISITOR for token in named) else None


def bare_name(label: str) -> str:
    """The label without a role beside the name: "Bob (Sales)" and "Agent (Bob)" are Bob; a role alone stays.

    >>> bare_name("Bob (Sales)"), bare_name("Ann Example (visitor)"), bare_name("Agent (Bob)"), bare_name("Agent")
    ('Bob', 'Ann Example', 'Bob', 'Agent')
    """
    head, *behind = (part.strip(" -–—,*_)]") for part in re.split(r"\s*[(\[|]", label, maxsplit=1))
    if behind and behind[0] and role_of(head) is not None and role_of(behind[0]) is None:
        return behind[0]
    return head or label.strip()


def key_of(label: str) -> str:
    """What one speaker's labels have in common."""
    return " ".join(bare_name(label).casefold().split())
