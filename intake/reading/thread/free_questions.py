"""Questions in the staff's own words: which field a piece that asks something asks for."""

import re
from collections.abc import Mapping

_ONE = (
    r"(?:one|it|they|each|these|those|them|the|your|a|single|product|products|cases?"
    r"|box(?:es)?|cartons?|trays?|bottles?|totes?|bags?|items?|unit|units|packages?"
    r"|jars?|pails?|drums?)"
)
_NOT_PRODUCT = (
    r"(?!.*\b(?:ceiling|door|doorway|opening|room|beam|machine|floor|gate|roof|space"
    r"|passage|walkway|footprint|rise|lift|drop|mezzanine|infeed|discharge|conveyor"
    r"|deck)\b)"
)
_TIME_UNIT = r"(?:a|per|an|each|every|the|/)\s?(?:minute|min|hour|hr|day|shift)"

# Each row: words that ask for it, and the fields in the order in which they are asked for. All rows count; a row
# after "not" keeps it from questions about something else.
_ROWS: tuple[tuple[str, tuple[str, ...]], ...] = (
    (rf"^{_NOT_PRODUCT}.*\b(?:weigh\w*|heav\w+|mass|how many (?:lbs?|pounds|kilos?|kgs?))\b", ("product.weight",)),
    (
        rf"^{_NOT_PRODUCT}.*(?:how (?:big|large)\b|\bdim(?:ension)?s?\b"
            rf"|\bmeasurements?\b|\bfootprint of (?:one|each|the case)"
        r"|\b(?:what|which|the|and|case|box|product|carton|tray|their|its"
            r"|your)(?: is| are|'s)?(?: the| its| their| your)? sizes?\b(?! of order)"
        r"|\blength\b.*\bwidth\b|\bl ?x ?w\b|^sizes?$)",
        ("product.length", "product.width", "product.height", "product.diameter"),
    ),
    (rf"^{_NOT_PRODUCT}.*\bhow (?:tall|high) (?:is|are|would) {_ONE}\b"
        rf"|^{_NOT_PRODUCT}.*\bproduct height\b", ("product.height",)),
    (r"^(?:and |so )*(?:by )?how (?:high|much)(?: up| down)?$", ("rise.height",)),
    (r"\bby how much\b|\bwhat(?:'s| is) the (?:drop|travel)\b", ("rise.height",)),
    (r"^(?:and |the )*(?:space|room|area|footprint)$", ("space.length", "space.width")),
    (r"^(?:and )?how tall$", ("product.height",)),
    (r"^(?:and )?how wide$", ("product.width",)),
    (rf"^{_NOT_PRODUCT}.*\b(?:how wide (?:is|are) {_ONE}|product width)\b", ("product.width",)),
    (rf"^{_NOT_PRODUCT}(?!.*\b(?:take|until|wait|run"
        rf"|delivery)\b).*\b(?:how long (?:is|are) {_ONE}|product length)\b", ("product.length",)),
    (rf"^{_NOT_PRODUCT}.*\b(?:diameter|how far across|how thick around)\b", ("product.diameter",)),
    (
        r"\bwhat (?:exactly )?(?:would|do|are|is|will|did|does)\b.*\b(?:mov(?:e"
            r"|ing)|convey\w*|lift\w*|transport\w*|carry\w*"
        r"|handl\w+|elevat\w+|rais(?:e|ing)|ship\w*|pack\w*)\b(?!.*\b(?:weigh|up or down)\b)"
        r"|\b(?:what|which) (?:kind|type|sort)s? of (?:product|package|packag\w*"
            r"|item|case|container|load|goods|box|unit)"
        r"|\bwhat(?:'s| is| are) (?:the |your )?(?:products?|goods|items?"
            r"|load)\b(?! (?:weight|size|made|temp|height|like|rate))"
        r"|\bwhat products?\b",
        ("product.type",),
    ),
    (r"\b(?:peak|busiest|maximum rate|max rate|surge|top rate|at most"
        r"|at the most)\b.*|\bhow many\b.*\b(?:at most|max|peak)\b", ("rate.peak",)),
    (
        rf"\bhow many\b(?!.*\b(?:hours?|shifts) (?:a|per) day\b).*\b{_TIME_UNIT}\b"
            rf"|\b(?:throughput|what rate|flow rate|the rate"
        rf"|your rate|which rate|production rate|rate do|rate is|normal rate"
            rf"|how fast|what speed|what pace|{_TIME_UNIT} rate)\b"
        r"|\bhow many (?:come|run|pass|go) (?:through|by|past)\b"
            r"|^(?:and )?(?:the )?rate$|\bcases per (?:minute|hour)\b",
        ("rate.normal",),
    ),
    (
        r"\bwhere\b.*\b(?:com(?:e|es|ing) in|com(?:e|es|ing) on|arriv\w+|enters?"
            r"|start|loaded|fed|infeed)\b|\b(?:infeed|inlet|in ?feed"
        r"|loading|pick ?up|lower (?:end|level|conveyor))\b.*\b(?:heights?|high"
            r"|levels?|elevations?|at)\b|\b(?:heights?|high|levels?|elevations?)"
        r"\b.*\b(?:infeed|in ?feed|inlet|com(?:e|es|ing) in|come on|enters?|arriv\w+|loaded)\b",
        ("rise.infeed_height",),
    ),
    (
        r"\bwhere\b.*\b(?:go(?:es|ing)? out|com(?:e|es|ing) out|com(?:e|es) off"
            r"|leav\w+|exits?|discharg\w+|deliver\w*|end up|outfeed|and out)\b"
        r"|\b(?:discharge|outlet|out ?feed|drop ?off|upper (?:end|level"
            r"|conveyor))\b.*\b(?:heights?|high|levels?|elevations?|at)\b"
        r"|\b(?:heights?|high|levels?|elevations?)\b.*\b(?:discharge|out ?feed"
            r"|outlet|go(?:es)? out|come out|leav\w+|exits?|and out)\b",
        ("rise.discharge_height",),
    ),
    (
        r"\bhow (?:high|far)\b(?!.*\b(?:ceiling|door|beam|overhead|opening|in|out"
            r"|leave|infeed|discharge|across|lean|floor do)\b).*"
        r"\b(?:go|lift\w*|rais\w+|up|down|climb|rise|travel|mov\w+|lower\w*"
            r"|elevat\w+)\b|\bhow much (?:higher|lower|of a rise)\b"
        r"|\b(?:what|which|the|your|total|net)(?:'s| is)?(?: the)? (?:rise"
            r"|lift height|lift|elevation change|height difference"
        r"|vertical (?:distance|rise)|change (?:of|in) (?:height|elevation)"
            r"|difference in height)\b|\bhow high (?:is|does) the (?:rise|lift"
            r"|mezzanine)\b",
        ("rise.height",),
    ),
    (r"\b(?:up or down|up, down|going up|go up, come down|which direction|up only"
        r"|upwards? or|raised or lowered)\b", ("rise.direction",)),
    (
        r"\b(?:which|what) (?:way|direction)\b.*\b(?:leave|exit|go out|come out"
            r"|discharge|out|turn)\b|\bstraight (?:on|through|ahead|out)\b"
        r"|\bback the way\b|\bsame direction\b|\bleft or right\b|\bquarter turn\b",
        ("rise.turn",),
    ),
    (r"\bhow many (?:levels|floors|discharges?|stops|outlets|exits|stories)\b"
        r"|\b(?:one|single) level\b.*\bseveral\b", ("rise.levels",)),
    (
        r"\b(?:ceiling|headroom|head room|overhead|clear height|lowest (?:thing"
            r"|beam|point|pipe|obstruction)|roof height"
        r"|beams?|clearance above|building height)\b",
        ("space.ceiling",),
    ),
    (
        r"\b(?:how much|what|any|enough|the)\b.*\b(?:floor ?space|floor area"
            r"|footprint|room (?:do|does|is there|have|could|can)"
        r"|space (?:do|is|there|available|have|can|could|for|the))\b"
            r"|\bhow much (?:room|space|floor)\b|\bfloor ?space\b"
        r"|\bspace (?:available|for it|for the machine)\b",
        ("space.length", "space.width"),
    ),
    (r"\bhow (?:wide|broad)\b.*\b(?:door|doorway|opening|gate|way in|passage)\b", ("space.opening_width",)),
    (r"\bhow (?:high|tall)\b.*\b(?:door|doorway|opening|gate|way in)\b", ("space.opening_height",)),
    (
        r"^(?!.*\bhow (?:wide|broad|high|tall)\b).*\b(?:door|doorway|doors|way in"
            r"|opening on|tightest|narrowest|get it in(?:to|side)?)\b",
        ("space.opening_width", "space.opening_height"),
    ),
    (r"\b(?:underneath|pass under|walk under|drive under|beneath|get under|go under"
        r"|through underneath)\b", ("space.passage",)),
    (r"\b(?:shaft|open floor|hole in|cut-?out)\b", ("space.kind",)),
    (r"\b(?:made (?:of|from)|materials?|what(?:'s| is) the (?:outside|surface"
        r"|underside|bottom) (?:like|of)|corrugated|cardboard or|plastic or"
        r"|glass or)\b", ("product.surface",)),
    (r"\b(?:closed|sealed|taped|lidded|(?:a|any|the) lids?|lids on|open at the top"
        r"|open tops?|open or|spill)\b", ("product.closed",)),
    (r"^(?!.*\b(?:clean|wash)\w*).*\b(?:wet|oily|icy|iced|dusty|damp|greasy|condensation)\b", ("product.wet",)),
    (r"\b(?:full or empty|full, empty|empty|empties)\b", ("product.fill",)),
    (r"\b(?:rigid|stiff|stay hard|squishy|give a little|firm or|soft or|how firm"
        r"|how stiff)\b", ("product.rigidity",)),
    (
        r"\bhow many (?:different |other )?(?:sizes|kinds|skus?|formats|types"
            r"|products|variants)\b|\b(?:several|different|other|more than one"
            r"|multiple|just one) sizes?\b"
        r"|\bone size\b|\ball (?:the )?same size\b",
        ("product.sizes",),
    ),
    (r"\b(?:mixed|in batches|one size at a time|same time or)\b", ("product.mix",)),
    (r"\b(?:what (?:do|does) (?:it|they|one) (?:stand|sit|rest) on|flat bottoms?"
        r"|underside|feet or|runners|bottom flat)\b", ("product.underside",)),
    (r"\bhow many (?:bottles|pieces|units|cans|jars|packs|items|cartons)\b.*\b(?:in"
        r"|to|per|on) (?:a|each|one|every|the)\b(?! (?:minute|min|hour|day))", ("product.pieces",)),
    (r"\b(?:how hard|what force|how much force|squeeze limit)\b", ("handling.squeeze_limit",)),
    (r"^(?!.*\b(?:how hard|how much force)\b).*\b(?:by (?:the|its|their) sides?"
        r"|squeez\w+|grip(?:ped)?|clamp\w*|pinch\w*|held from the sides?)\b", ("handling.squeeze",)),
    (r"\b(?:upside down|turn(?:ed)? over|invert\w*|flip\w*|upright)\b", ("handling.invert",)),
    (r"\b(?:lean|tilt\w*|stay level|how steep|incline angle)\b", ("handling.tilt",)),
    (r"\b(?:fragile|delicate|easily (?:hurt|damaged|broken)|break easily|breakable)\b", ("handling.fragile",)),
    (r"\b(?:press\w*|lie|lean|push) (?:down )?on (?:the |its |their )?top\b"
        r"|\btop (?:flat|firm)\b|\bon top of (?:it|them)\b", ("handling.press_top",)),
    (r"\b(?:other side (?:leading|first|in front)|turned sideways|long side first"
        r"|short side first|travel sideways)\b", ("handling.turn_flat",)),
    (r"\b(?:how do they (?:arrive|come)|back to back|evenly spaced|with gaps"
        r"|in bunches|bunched|in groups)\b", ("rate.arrival",)),
    (r"\b(?:back up|accumulate|accumulation|wait on the machine|queue on)\b", ("rate.backs_up",)),
    (r"\b(?:product temp\w*|how (?:warm|cold|hot) (?:is|are) (?:they|it|the (?!room"
        r"|area|hall|space|building|plant)\w+)|temperature of the (?:product"
        r"|cases?))\b", ("temperature.product",)),
    (
        r"^(?!.*\b(?:product temp\w*|how (?:warm|cold|hot) (?:is|are) (?:they|it"
            r"|the (?!room|area|hall|space|building|plant)\w+)"
            r"|temperature of the (?:product|cases?))\b).*"
        r"\b(?:temperatures?|freezer|chilled|refrigerat\w+|how (?:cold|warm|hot)"
            r"|ambient|cold room|cooler|room like|environment)\b",
        ("temperature.zone", "temperature.room"),
    ),
    (r"\bhow often\b.*\b(?:clean|wash)\w*|\b(?:clean|wash)\w*\b.*\bhow often\b"
        r"|\bcleaning (?:frequency|schedule)\b", ("cleaning.frequency",)),
    (r"\b(?:clean|wash) with\b|\b(?:chemicals?|detergents?|caustic|cleaning agents?"
        r"|soap)\b", ("cleaning.chemicals",)),
    (r"\bpressure\b.*\b(?:hose|wash\w*)\b|\b(?:hose|washer)\b.*\bpressure\b", ("cleaning.pressure",)),
    (
        r"^(?!.*\bhow often\b)(?!.*\bclean with\b).*\b(?:clean(?:ed|ing)?|wash(?:ed|down)?|washing|hosed?|hygiene)\b"
        r"|\bhow\b.*\b(?:clean|wash)(?:ed)?\b.*\bhow often\b",
        ("cleaning.method",),
    ),
    (r"\b(?:unwrapped|exposed|open|bare|direct) food\b|\bfood\b.*\b(?:touch|contact)\w*", ("cleaning.exposed_food",)),
    (r"\b(?:stainless|painted)\b", ("cleaning.frame",)),
    (r"\b(?:explosi\w+|hazardous|hazard|classified|ex zone|dust zone)\b", ("site.hazardous_area",)),
    (r"\b(?:power|voltage|volts?|electric\w*)\b(?!.*wash)", ("site.voltage", "site.phases", "site.frequency")),
    (r"^(?!.*\b(?:power|voltage)\b).*\b(?:three|single)[- ]phase\b", ("site.phases",)),
    (r"\b(?:50 or 60|hertz|hz)\b", ("site.frequency",)),
    (r"\b(?:how many hours|hours a day|hours per day|how many shifts|shifts?|around the clock)\b", ("site.hours",)),
    (r"\b(?:compressed|shop|plant) air\b|\bis there (?:any )?air\b|\bair (?:supply|line)\b", ("site.air",)),
    (r"\bwhat (?:feeds|brings|comes before|is before|hands|sits upstream)\b|\bupstream\b", ("site.before",)),
    (r"\bwhat (?:takes|comes after|happens after|is after|comes next|receives)\b|\bdownstream\b", ("site.after",)),
    (
        r"\bwhen\b.*\b(?:need|like|want|installed|running|there|ready|start)\b"
            r"|\b(?:how soon|by when|deadline|time ?line|time ?frame|target date"
            r"|needed by|delivery date|how urgent)\b",
        ("project.weeks",),
    ),
    (r"\bsamples?\b", ("project.samples",)),
    (r"\b(?:new line|replac\w+|retrofit|greenfield|new installation)\b", ("project.purpose",)),
    (r"\bhow many (?:machines|units do|lifts|of (?:them|these) do|systems)\b"
        r"|\bone machine or\b", ("project.machines",)),
    (
        r"\b(?:which|what) (?:country|state|region|city|town|part of)\b"
            r"|\bwhere (?:is|are) (?:you|your (?:plant|site|facility|factory)"
            r"|the (?:plant|site|facility|factory))\b|\bwhere (?:is|will) (?:it|this"
            r"|the machine) (?:be |going to )?(?:located|installed|stand|based)\b",
        ("project.place",),
    ),
    (r"\byour name\b|\bwho am i (?:speaking|chatting|talking)\b|\bwhom? (?:do i|am i)\b", ("contact.name",)),
    (r"\b(?:which|what|your) company\b|\bcompany (?:name|is it)\b|\bwho (?:are )?you with\b", ("contact.company",)),
    (r"\be-?mail\b|\breach you\b|\bget back to you\b", ("contact.email",)),
    (r"\b(?:phone|telephone|number to (?:call|reach)|call you)\b|\breach you\b", ("contact.phone",)),
)  # fmt: skip
_COMPILED = tuple((re.compile(pattern), fields) for pattern, fields in _ROWS)
_PEAK_TOO = re.compile(r"\b(?:normal\w*|average|usual\w*|typical\w*|most of the time)\b")

_YES_MEANS: Mapping[str, tuple[str, str]] = {
    "product.closed": (r"closed|sealed|taped|lid(?:s|ded)?\b|lids on|shut", r"open\b|spill|come out\b|leak"),
    "product.wet": (r"\bwet|oily|icy|iced|dusty|damp|greasy|condensation", r"\bdry|clean"),
    "handling.squeeze": (
        r"by (?:the|its|their) sides?|squeez|grip|clamp|pinch|held",
        r"must not|avoid|damage|crush|mark",
    ),
    "handling.invert": (r"upside down|turn(?:ed)? over|invert|flip", r"upright|stay"),
    "handling.fragile": (r"fragile|delicate|easily|break", r"sturdy|robust|tough|withstand"),
    "handling.press_top": (r"on top|top flat|firm|lie on|press", r"avoid|must not|damage"),
    "handling.turn_flat": (r"other side|sideways|side first", r"must not|only"),
    "rate.backs_up": (r"back up|accumulat|wait|queue", r"must not|avoid|never"),
    "cleaning.exposed_food": (r"unwrapped|exposed|open food|bare|touch|contact", r"\bwrapped|packed|packaged|sealed"),
    "site.hazardous_area": (r"explosi|hazard|classified|ex zone|dust zone", r"safe|ordinary|normal|non-"),
    "site.air": (r"air", r"without|no air"),
    "project.samples": (r"sample", r"without"),
    "test.transfers": (r"pass|transfer", r"catch|turn"),
}
_DENIES = re.compile(r"\b(?:not|no|never|without|isn't|aren't|don't|doesn't|won't|can't|n't)\b|n't\b")


def fields_asked(piece: str) -> tuple[str, ...]:
    """The fields that these words ask for, in the order of the table; () where they ask for none.

    >>> fields_asked("and how heavy is one?"), fields_asked("what's the ceiling like?")
    (('product.weight',), ('space.ceiling',))
    """
    words = " ".join(piece.casefold().replace("’", "'").split())[:400].strip(" .,;:!-–—")
    bare = words.rstrip("? ")
    found = [name for pattern, fields in _COMPILED if pattern.search(bare) for name in fields]
    if "rate.peak" in found and "rate.normal" in found:
        if not _PEAK_TOO.search(bare):
            found.remove("rate.normal")
        else:
            found.sort(key=lambda name: name == "rate.peak")
    return tuple(dict.fromkeys(found))


def yes_means(field: str, piece: str) -> bool | None:
    """What a bare yes to these words says of a yes-no field; None where that cannot be told for sure."""
    words = piece.casefold()
    if field not in _YES_MEANS or _DENIES.search(words):
        return None
    for_yes, for_no = (re.search(pattern, words) is not None for pattern in _YES_MEANS[field])
    return None if for_yes == for_no else for_yes
