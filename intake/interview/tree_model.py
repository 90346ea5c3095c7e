"""What may stand in a file of the question tree, as models that check what people wrote."""

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, StrictBool, StrictStr, StringConstraints

Text = Annotated[str, StringConstraints(strict=True, strip_whitespace=True, min_length=1)]
Word = Annotated[str, StringConstraints(strict=True, pattern=r"^[a-z][a-z0-9_]*$")]


class Entry(BaseModel):
    """Unknown keys are slips of the pen, never ignored."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)


class ConditionModel(Entry):
    """Holds when the field is known to be one of these choice words (true or false for a yes or no)."""

    field: Text
    any_of: Annotated[tuple[StrictBool | StrictStr, ...], Field(min_length=1)]


class WordingModel(Entry):
    """Another way to say a question.

    `when`: all lines must hold. `asks`: said only while nothing but these fields of the question is open.
    """

    say: Text
    when: tuple[ConditionModel, ...] = ()
    asks: tuple[Text, ...] = ()


class QuestionModel(Entry):
    """One question: what is sent to the visitor, why the staff asks it, and which facts it brings."""

    id: Word
    fields: Annotated[tuple[Text, ...], Field(min_length=1)]
    say: Text
    why: Text
    cost: Literal[1, 2, 3] = 1
    unknown_ok: Text
    settle: Text
    wordings: tuple[WordingModel, ...] = ()


class PlausibleModel(Entry):
    """What a figure usually lies between, in the field's canonical unit; outside it is asked back."""

    low: Annotated[float, Field(allow_inf_nan=False)]
    high: Annotated[float, Field(allow_inf_nan=False)]


Plain = StrictBool | StrictStr | float
Range = Annotated[tuple[float, ...], Field(min_length=2, max_length=2)]


class AssumptionModel(Entry):
    """One entry of assumptions.toml: what stands in for a fact, or for a friction, that nobody gave."""

    id: Word
    basis: Text
    field: Text | None = None
    friction: Literal["belt", "high_friction_belt", "grip"] | None = None
    of: Text | None = None
    when: dict[str, Annotated[tuple[StrictBool | StrictStr, ...], Field(min_length=1)]] = {}
    low: float | None = None
    typical: float | None = None
    high: float | None = None
    possible: Range | None = None
    values: Annotated[tuple[Plain, ...], Field(min_length=1)] | None = None
    test: Text | None = None


class NeedlessModel(Entry):
    """One row of needless.toml: a fact that need not be asked once others are known."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True, populate_by_name=True)

    field: Text
    why: Text
    known: tuple[Text, ...] = ()
    unless_known: tuple[Text, ...] = ()
    is_word: dict[str, Annotated[tuple[Plain, ...], Field(min_length=1)]] = Field(default={}, alias="is")


class OddsModel(Entry):
    """One row under [[odds]] of assumptions.toml: a rare word of a field, with the share of jobs that have it."""

    field: Text
    word: StrictBool | StrictStr
    share: Annotated[float, Field(strict=True, allow_inf_nan=False)]
    basis: Text


class TogetherModel(Entry):
    """One row of together.toml: questions that become one message."""

    questions: tuple[Text, ...]
    say: Text
    why: Text
