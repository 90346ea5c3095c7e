"""Advice in lines of text for screen, chat and sheet, from templates in data filled with the case's own figures."""

from intake.advice.brief import Answer, Brief
from intake.advice.by_name import SUBJECTS, AdviceError, advise
from intake.advice.cautions import caution_lines
from intake.advice.delivery import delivery
from intake.advice.families import family_name, margin_line, short_family_name, verdict_line, why_not
from intake.advice.figures import figure_lines
from intake.advice.largest import how_fast, how_high
from intake.advice.messages import follow_up_lines, next_question_message, sample_request
from intake.advice.reach import reach, reach_json, reach_lines
from intake.advice.recommend import assumption_line, recommendation
from intake.advice.room import shipping, way_in
from intake.advice.settled import settled, would_change_lines
from intake.advice.still import to_find_out
from intake.advice.trials import trials
from intake.advice.what_if import what_if
from intake.advice.would_fit import would_fit

__all__ = [
    "SUBJECTS",
    "AdviceError",
    "Answer",
    "Brief",
    "advise",
    "assumption_line",
    "caution_lines",
    "delivery",
    "family_name",
    "figure_lines",
    "follow_up_lines",
    "how_fast",
    "how_high",
    "margin_line",
    "next_question_message",
    "reach",
    "reach_json",
    "reach_lines",
    "recommendation",
    "sample_request",
    "settled",
    "shipping",
    "short_family_name",
    "to_find_out",
    "trials",
    "verdict_line",
    "way_in",
    "what_if",
    "why_not",
    "would_change_lines",
    "would_fit",
]
