"""Unwrapped food on the machine: what lies on the belt, what alone touches it, what stays packed."""

import re

from intake.reading.message.plain import plain
from intake.reading.message.scene import Draft, Scene

_FOOD = (
    r"(?:food|bread|loaf|loaves|dough|cheeses?|meat|meats|chicken|chickens|poultry|fish|fillets?|hams?"
    r"|sausages?|bacon|pizzas?|pastry|pastries|cakes?|pies?|buns?|rolls|muffins?|cookies|biscuits?|crackers?"
    r"|chocolates?|candy|candies|sweets|fruits?|apples?|oranges?|potato|potatoes|carrots?|vegetables?|lettuce"
    r"|produce|eggs?|patties|burgers?|nuggets|tortillas?|bagels?|donuts?|doughnuts?|croissants?|wafers?"
    r"|pasta|noodles|rice|salmon|shrimps?|beef|pork|turkey|carcass\w*|confectionery|butter|tofu|berries|nuts"
    r"|grain|pretzels?|baguettes?|waffles?|pancakes?|pralines?|truffles?|portions|icing|ice cream|popsicles"
    r"|product|products)"
)
_BELT = r"(?:belts?|slats?|machine|machines|chain|conveyor|modules|lift|equipment|carrier|flights?|it|them)"
_HOLDER = (
    r"(?:trays?|basket|baskets|crates?|box|boxes|case|cases|carton|cartons|totes?|bag|bags|film|pans?|boards?"
    r"|pallets?|container|containers|packages?|packaging|pouch|pouches|liner|mould|mold|sheet|wrapper|outer"
    r"|bottle|jar|can)"
)
_NO = re.compile(
    rf"\b(?:no|never|not|nothing)(?: \w+){{0,2}} (?:bare|raw|naked|unwrapped|exposed|loose) {_FOOD}"
    rf"|\b{_FOOD} touch(?:es)? (?:only )?(?:its|their) (?:own )?{_HOLDER}|\b(?:only|just|solely) (?:the |our "
    rf"|a )?(?:\w+ )?{_HOLDER} (?:\w+ )?(?:touch\w*|meets?|contacts?|does|do"
    rf"|sees?|come\w*|is|lies|rests|sits)\b|\b(?:touch\w*|contact\w*|meets?|sees?) only (?:the |its "
    rf"|a )?(?:\w+ )?{_HOLDER}"
    rf"|\b(?:never|not|n't|doesn't|don't|doesnt|dont|no (?:bare |raw |open |unwrapped |exposed "
    rf"|naked )?{_FOOD}) (?:ever |directly |actually |itself )*(?:touch\w*|meets?|contacts?|sees?|come\w* (?:in"
    rf"|into) contact)\b(?: \w+){{0,3}} {_BELT}\b"
    rf"|\bno (?:direct )?(?:food )?contact (?:with|to|between)\b|\b(?:food|everything|all product|all food"
    rf"|it all|all of it|product) (?:always |all |is |it |comes? |arrives? |stays? |remains? |already |fully "
    rf"|completely )*(?:wrapped|packed|packaged|bagged|boxed|sealed)\b"
    rf"|\b(?:everything's|food's|it's all|product's|all) (?:\w+ )?(?:wrapped|packed|packaged|bagged|boxed"
    rf"|sealed)\b|\b{_FOOD} (?:stays?|remains?) (?:in|on|inside) (?:the |its |their )?{_HOLDER}|\bno (?:exposed"
    rf"|open|bare|unwrapped|naked|direct|loose|raw) (?:food|product|contact)"
    rf"|\bnothing (?:\w+ )?(?:exposed|unwrapped|bare|open|naked)\b|\b(?:bare|raw|naked|unwrapped"
    rf"|open) {_FOOD} never\b|\bthere's no (?:open|exposed|bare) food"
)
_BARE = r"(?:bare|naked|unwrapped|uncovered|loose|raw|unpackaged|unpacked|exposed|directly|direct|open)"
_YES = re.compile(
    rf"\b{_FOOD}\b(?: \S+){{0,6}}? (?!open){_BARE}\b(?: \S+){{0,4}}? (?:on(?! top)|onto|with|in contact with"
    rf"|touch\w*|when)\b"
    rf"|\b{_BARE} (?:\w+ )?{_FOOD}\b(?: \S+){{0,6}}? (?:on|onto|touch\w*|meets?|drips?"
    rf"|slides?)\b(?: \S+){{0,4}}? {_BELT}\b"
    rf"|\b{_FOOD} (?:\S+ )?(?:touch\w*|contacts?|does touch|lies? on|sits? on|rides? on"
    rf"|goes? on)\b(?: \w+){{0,3}}? {_BELT}\b|\b(?:lies?|lay|sits?|rides?|travels?|goes|go|runs?"
    rf"|slides?) (?:\w+ )?(?:{_BARE}|straight|right) (?:\w+ )?(?:on|onto) (?:the |your |our )?{_BELT}\b"
    rf"|\b{_FOOD}(?: \S+){{0,3}}? (?:straight|right|directly) on(?:to)? (?:the |your |our )?{_BELT}|\b(?:touch"
    rf"|touches) (?:the )?(?:unwrapped|bare|raw|naked|open)\b|\b(?:direct|open|bare"
    rf"|raw) food(?: contact)?\b(?! (?:safety|plan|code))|\b(?:exposed|unwrapped|unpackaged|naked"
    rf"|unpacked) (?:\w+ )?(?:food|product|bread|loaves|dough|cheese|meat|fish|chicken|cookies|biscuits|cakes"
    rf"|buns|chocolates?)\b"
    rf"|\bfood contact (?:: )?(?:open|yes|direct|required)|\b{_FOOD} (?:is|are|comes?|goes"
    rf"|travels?) (?:\w+ )?(?:unwrapped|naked|bare|loose|unpackaged|unpacked|not wrapped|not packed|n't wrapped)\b"
)
_QUICK = re.compile(
    r"touch|contact|bare|naked|unwrap|uncover|loose|raw|unpack|expos|direct|open food|wrapped|packed|packaged"
    r"|bagged|boxed|sealed|never meets|straight on|right on|unwrapped|lie|lies|open"
)
_THINGS = re.compile(
    r"\b(?:flyers?|pallet|pallets|paper|magazines?|newspapers?|books?|parts|bolts|steel|tyres?"
    r"|tires?|lumber|bricks?|mail|seedlings?|plants|flowers|dog|cable)\b"
)


def food_drafts(scene: Scene) -> list[Draft]:
    """Whether unwrapped food touches the machine; what denies it comes first."""
    if _QUICK.search(scene.shadow) is None:
        return []
    said: Draft | None = None
    for sentence in scene.sentences:
        if not 1 < sentence.after - sentence.first <= 150:
            continue
        words = plain(scene, sentence.first, sentence.after)
        for pattern, value in ((_NO, False), (_YES, True)):
            match = pattern.search(words.text)
            if match is None or not scene.live(words.token_at(match.start())) or (value and _THINGS.search(words.text)):
                continue
            first, after = words.token_at(match.start()), words.token_at(match.end() - 1) + 1
            start, end = scene.tokens[first].start, scene.tokens[after - 1].end
            draft = Draft("cleaning.exposed_food", start, end, value=value, at=first, rank=1)
            if not value:
                return [draft]
            said = said or draft
            break
    return [said] if said is not None else []
