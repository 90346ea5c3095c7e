"""What a length speaks of: a door, the ceiling, floor space, where product comes on or leaves, or the product."""

import re

_TOPIC = re.compile(
    r"\b(?:(?P<opening>door|doorway|window(?! carton| box)|dock door|overhead door|opening|gate(?! valve)"
    r"|entrance|hatch|entry way"
    r"|entryway|way in|roll up door|rollup|passageway|door frame|access|double door)"
    r"|(?P<ceiling>(?:beam|steel|truss|joist|pipe|duct) bottom|ceiling"
    r"|tallest thing|tallest (?:you|we|it) (?:can|could|may)|soffit"
    r"|underside of (?:the )?\w+|u / s|underside of|lowest (?:beam|point|pipe|obstruction|thing|duct|light"
    r"|steel|joist|truss)|beam|truss"
    r"|rafter|joist|headroom|head room|overhead(?= (?:clearance|obstruction|limit|is|at|height|room|space|beam"
    r"|pipe|steel|duct|crane|clear)|:|\W*$)|sprinkler(?: pipe| head|"
    r" line)?|roof(?! conveyor| belt| line)|girder|duct|ductwork"
    r"|obstruction|clear height|pipe|cable tray|light fixture|bar joist|roof steel|crane|purlin|(?:light|lamp"
    r"|fan|heater|sign|hook)s? (?:hang|come)|hang(?:s|ing)?(?: down)?|clear (?:inside|building)|bottom of"
    r" (?:steel|beam))"
    r"|(?P<space>floor place|floor (?:i|we|you) (?:can|could)|(?:could|can) (?:spare|give|offer|free)|free up"
    r"|let you have|space|spot|area|floor space|floorspace|floor area|corner|(?<!loading )(?<!dock )bay|(?:max"
    r"|available|machine|allowed"
    r"|your) footprint|footprint (?:available|for|of (?:the|your) machine)|pit|room (?:for|to)|(?:we|i|you)"
    r" (?:have|have got|got|get|can give)|available|patch of floor|place for it|niche|alcove|slot|strip|hole"
    r"|plot|piece of floor|square of floor|envelope|fit (?:in|into|inside|within)|real estate|shaft|machine"
    r" (?:can|may|could|must)|keep (?:it|this|everything|the machine|the whole thing)|room|floor plan|site"
    r"|layout|slab|clearance between|between (?:column|wall|post"
    r"|two)|column)"
    r"|(?P<inlow>lower (?:level|floor|conveyor|end|belt|line)|bottom(?: conveyor| level| end)?(?! of)|low (?:end|side"
    r"|point|conveyor|level)|downstairs|ground (?:floor|level)|basement|lower one|low one)"
    r"|(?P<high>mezzanine|upper (?:level|floor|conveyor|end|belt|line|deck)|top(?: conveyor| level| floor| end|"
    r" deck| belt)?(?! of)|upstairs|(?:second|2 nd|third|3 rd|next) (?:floor|level)|deck|platform|high (?:end"
    r"|side|point|conveyor|level)|upper one|hopper|level (?:2|two|3|three)|balcony|catwalk|gantry)"
    r"|(?P<infeed>height in(?= is|,|:| of|$)|waist (?:height|level)|hand (?:- )?load\w*|load\w* by hand|(?:that"
    r"|which) (?:deliver|bring|feed|suppl(?:y|ie)|hand over|send)|inf(?= |$)|intake|(?:quota|height"
    r"|level) of (?:the )?entrance|entrance (?:height|level|side|quota)|in ?feed|in - feed|feed it|feed|fed"
    r"|feeding|come in|coming in|came in|come on|coming on|enter"
    r"|entering|get on|getting on|go on|going on|load at|loaded at|loading|load height|pick up|picked up|picking"
    r" up|pickup|start|starting|incoming|inlet|entry|receive|supply (?:conveyor|line|belt)|upstream"
    r"|arrive|arriving|in at|charge|source|(?:leave|off|out of) (?:the )?(?:\w+ )?(?:packer|filler"
    r"|wrapper|sealer|line|labeler|taper|labeller|oven|bagger|palletizer level|case packer|checkweigher|former"
    r"|robot)|(?:packer|filler|wrapper|sealer|labeler|taper|bagger|checkweigher|case packer|roller conveyor"
    r"|(?:our|the) line|cartoner|oven"
    r"|press|washer|depal\w*|capper|erector|former|packing (?:table|line|conveyor)) (?:hand over|hand off"
    r"|hands over|is|discharge|outfeed"
    r"|conveyor|out ?feed|exit|height|belt|deliver"
    r"|leave|drop|at|:)|present conveyor|(?:our|existing|current|present) (?:conveyor|line|belt|table)"
    r"|infeed end|conveyor in|incoming line|tail)"
    r"|(?P<discharge>take ?(?:- )?away|height out|outgoing|(?:that|which) (?:take|receive|remove|carrie|pick)"
    r"|(?:quota|height"
    r"|level) of (?:the )?exit|discharge|discharging|out ?feed|out - feed|outlet|leave|leaving|exit|exiting|come off"
    r"|coming off|come out|coming out|get off|getting off|go off|going off|off load|offload|unload|unloading"
    r"|deliver|delivered|delivering|delivery|drop off|dropped off|dropping off|dropoff|end up|end at|ending"
    r"|destination|out at|downstream|receiving|need (?:it|them|those|product) (?:up )?(?:at|to)|hand off|hand over"
    r"|handed over|deposit|palleti[sz]er(?: in ?feed)?|(?:hit|reach|meet|match)(?: (?:the|a|our))?(?:"
    r" \w+){0,2} (?:in ?feed|conveyor)|hit|reach|land"
    r"|landing|out height|out elevation|finish|set down|put down|hand them|released?|kick out|transfer out|head)"
    r"|(?P<machine>belt width|roller|conveyor width|frame width|aisle|corridor|truck|trailer|rack|shelf|shelve|walkway)"
    r")\b"
)
PRODUCT_WORDS = re.compile(
    r"\b(?:product|case|box|carton|tray|bundle|bottle|jar|jug|canister|tub|cup|pail|bucket|bag|sack|pouch"
    r"|tote|bin|crate|keg|"
    r"drum|barrel|pallet|load|skid|package|pack|size|dimension|dim|each|they|they're|it's|unit|item|part|piece"
    r"|biggest|largest|smallest|"
    r"longest|tallest|weigh|shipper|container|measure|measuring)\b"
)
_WEAK_VERB = re.compile(
    r"start|starting|come in|coming in|came in|come on|enter|leave|leaving|hit|reach|land|finish|end at|end up|ending"
    r"|go off|get on|get off|exit"
)
"""Said of a beam or a door too: "the roof beams start at 14 ft"."""
_NO_NOUNS = frozenset(
    {
        "measure", "measuring", "biggest", "largest", "smallest", "longest", "tallest", "each", "they", "they're",
        "it's", "size",
    }
)  # fmt: skip
_PASSING = re.compile(r"\b(?:and|then|which|that)\b")


def topic_of(words: str) -> str:
    """The last topic that these words name; "" where they name none. Words about the product count as "product"."""
    last = next(reversed([*_TOPIC.finditer(words)]), None)
    product = next(
        (match for match in reversed([*PRODUCT_WORDS.finditer(words)]) if match.group() not in _NO_NOUNS), None
    )
    if last is None:
        return "product" if product is not None else ""
    if last.lastgroup in ("infeed", "discharge") and _WEAK_VERB.fullmatch(last.group()):
        subject = next((match for match in reversed([*_TOPIC.finditer(words, 0, last.start())])), None)
        if subject is not None and subject.lastgroup in ("ceiling", "opening") and last.start() - subject.end() < 20:
            return subject.lastgroup
    if (
        product is not None
        and product.start() > last.end()
        and last.lastgroup in ("space", "machine", "opening", "ceiling")
    ):
        return "product"
    return last.lastgroup or ""


_TO_A_BEAM = re.compile(
    r"\W*(?:(?:up )?to|below|under|beneath) (?:the |our |a )?(?:lowest |bottom of (?:the )?"
    r"|underside of (?:the )?)?(?:\w+ )?(?:beam|truss|joist|sprinkler|pipe"
    r"|duct|purlin|girder|rafter|ceiling|roof|steel|light|crane|obstruction)\b"
)
_UNDER_A_DECK = re.compile(
    r"\W*(?:clear )?(?:under|below|beneath|underneath) (?:the |our |that )?(?:mezzanine|deck|platform|walkway"
    r"|catwalk|floor above)\b"
)
_IS_WHERE = re.compile(
    r"[\s).]*(?:is|are|being|=|,)? ?(?:where|what|the height|the level|the point|the elevation)(?: (?!start"
    r"|begin|come|get|enter|end|land|leave"
    r"|deliver|discharge|go|exit|arrive|finish|need|want|drop)[\w']+){0,4} (?:(?P<infeed>start|begin|come in"
    r"|come on|get on|enter|arrive"
    r"|leave (?:the |our )?(?:\w+ )?(?:packer|filler|line|sealer|wrapper|oven|table|machine)|pick)"
    r"|(?P<discharge>end|land|leave"
    r"|deliver|discharge|exit|finish|go|need|want|drop|come off|come out|get off))"
)


def topic_behind(words: str) -> str:
    """The topic of the noun right behind a figure: "9 ft wide doorway", "3.5 m of floor"."""
    words = re.sub(r"^\W*(?:off|above) (?:the )?(?:floor|ground) (?=at )", "", words)
    words = re.sub(r"^\W*(?:=|is) (?:the |our |a )?", "", words.replace(" - ", " "))
    if _TO_A_BEAM.match(words) or _UNDER_A_DECK.match(words):
        return "ceiling"
    place = _IS_WHERE.match(words)
    if place is not None:
        return place.lastgroup or ""
    match = re.match(
        r"[\s\-)]*(?:(?:of|x|at|on|clear|square|wide|high|tall|free|open|usable|empty|in|the|our|a|roll|up|steel"
        r"|overhead|double|dock|main|finished) )*(?:(?:man|fire|loading|receiving|shipping|side|back|front|rear"
        r"|garage|freight|machine|entry|personnel|available|existing) )?"
        r"(?:(?P<opening>door|doorway|opening|gate|entrance|hatch|roll up|double door)|(?P<ceiling>ceiling"
        r"|headroom|head room|beam|truss|joist|sprinkler|pipe|duct|purlin|girder|rafter|bottom of steel|roof"
        r"|clearance|clear (?:building|warehouse|ceiling|hall|plant)"
        r"|clear(?: height)?(?=$| [,.)]| to| over| under))"
        r"|(?P<space>between (?:\w+ )?(?:column|wall|post|line|machine|rack|pillar)|space|spot|area"
        r"|floor ?space|floor|corner|bay|(?:max|available|machine|allowed|your)"
        r" footprint|footprint (?:available|for|of (?:the|your) machine)|pit|room|hole|shaft|plot|envelope|slot"
        r"|niche|alcove)|(?P<high>mezzanine|platform|deck|balcony|top(?! of)|upper (?:end|level|floor))"
        r"|(?P<inlow>bottom(?! of)|lower (?:end|level|floor))"
        r"|(?P<infeed>in ?feed|inlet|in feed|loading height|infeed height)|(?P<discharge>discharge|out ?feed"
        r"|outlet|exit)|(?P<machine>belt|conveyor|aisle|corridor|truck|trailer|rack|walkway|wall|column|roller"
        r"|pitch|center))\b",
        words,
    )
    return (match.lastgroup or "") if match else ""
