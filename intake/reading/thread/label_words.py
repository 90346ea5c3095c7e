"""Words that begin a line of a list of facts, and words that stand in no name."""

KEYS = frozenset(
    [
        "overall", "net", "gross", "clear", "available", "finished", "estimated", "expected", "desired", "target",
        "usable", "nominal", "approx", "approximate", "actual", "typical", "inside", "outer", "inner", "floor-to-floor",
        "size", "sizes", "dims", "dim", "dimension", "dimensions", "qty", "quantity", "quantities", "sku",
        "skus", "model", "item", "items", "part", "parts", "number", "subject", "re", "fw", "fwd", "date",
        "time", "phone", "tel", "telephone", "mobile", "cell", "fax", "email", "e-mail", "mail", "address",
        "web", "website", "url", "company", "contact", "ps", "nb", "fyi", "update", "edit", "edited", "warning",
        "caution", "attention", "attn", "question", "questions", "answer", "answers", "option", "options",
        "budget", "timeline", "deadline", "location", "site", "plant", "building", "dept", "department",
        "title", "project", "product", "products", "capacity", "throughput", "cycle", "cycles", "infeed",
        "outfeed", "discharge", "ceiling", "door", "doors", "doorway", "floor", "footprint", "voltage", "power",
        "air", "environment", "temp", "temps", "temperature", "cleaning", "washing", "washdown", "material",
        "materials", "type", "kind", "colour", "color", "packaging", "pack", "package", "shape", "max", "min",
        "avg", "average", "maximum", "minimum", "peak", "normal", "total", "count", "range", "from", "to", "cc",
        "bcc", "sent", "http", "https", "eg", "ie", "problem", "issue", "goal", "goals", "need", "needs",
        "requirement", "requirements", "require", "application", "industry", "current", "currently", "existing",
        "new", "old", "first", "second", "third", "fourth", "last", "next", "morning", "afternoon", "evening",
        "night", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "here", "also",
        "ok", "summary", "details", "detail", "specs", "spec", "specification", "specifications", "info",
        "information", "background", "thanks", "regards", "example", "examples", "hours", "hour", "shift",
        "shifts", "speed", "speeds", "pitch", "incline", "length", "width", "height", "depth", "diameter",
        "weight", "weights", "rate", "rates", "rise", "lift", "drop", "l", "w", "h", "d", "wt", "ht", "hgt",
        "lg", "dia", "mass", "load", "loads", "payload", "note", "notes", "remark", "remarks", "comment",
        "comments", "hi", "hello", "hey", "dear", "start", "stop", "end", "task", "situation", "purpose",
        "scope", "job", "request", "required", "wanted", "reason", "result", "today", "tomorrow", "yesterday",
        "now", "later", "duration", "rating", "status", "id", "ref", "reference", "order", "po", "rfq",
        "enquiry", "inquiry", "quote", "price", "cost", "lead", "delivery", "address", "place", "country",
        "region", "state", "city", "zip", "line", "lines", "area", "room", "rooms", "space", "level", "levels",
        "layout", "drawing", "photo", "photos", "attachment", "attached", "file", "files", "link", "page",
        "step", "steps", "mode", "service", "conveyor", "conveyors", "case", "cases", "box", "boxes", "carton",
        "cartons", "tray", "trays", "bottle", "bottles", "tote", "totes", "bag", "bags", "pallet", "pallets",
        "crate", "crates", "drum", "drums", "bundle", "bundles", "jar", "jars", "can", "cans", "tub", "tubs",
        "pail", "pails", "keg", "kegs", "unit", "units", "piece", "pieces", "inlet", "outlet", "entry", "exit",
        "in", "out", "up", "down", "top", "bottom", "upper", "lower", "upstream", "downstream", "elevation",
        "elevations", "clearance", "headroom", "opening", "openings", "hazard", "hazards", "supply", "phase",
        "phases", "voltage", "frequency", "frame", "surface", "outside", "inside", "base", "handling",
        "orientation", "direction", "turn", "angle", "slope", "priority", "topic", "transcript", "wait",
        "operating", "running", "production", "output", "input", "small", "medium", "large", "smallest",
        "largest", "lightest", "heaviest", "biggest",
    ]
)  # fmt: skip
STOPS = frozenset(
    [
        "the", "a", "an", "we", "i", "our", "is", "are", "was", "were", "at", "to", "for", "of", "and", "or",
        "with", "in", "on", "it", "they", "this", "that", "these", "those", "per", "by", "your", "my", "their",
        "its", "be", "been", "has", "have", "had", "will", "would", "can", "could", "should", "if", "but", "so",
        "as", "not", "no", "when", "where", "what", "how", "why", "which", "who", "about", "up", "about",
        "than", "then", "there", "please",
    ]
)  # fmt: skip

NEVER_KEYS = frozenset(["visitor", "agent", "guest", "prospect", "operator", "bot", "chatbot", "you", "me"])
"""Labels that are speakers wherever they stand; "Customer: Heron Teas" may be a line of a form."""
