"""Advice in lines of text for screen, chat and sheet, from templates in data filled with the case's own figures."""

from intake.advice.cautions import caution_lines
from intake.advice.families import family_name, short_family_name, verdict_line, why_not
from intake.advice.figures import figure_lines
from intake.advice.messages import follow_up_lines, next_question_message, sample_request
from intake.advice.reach import reach, reach_json, reach_lines
from intake.advice.recommend import assumption_line, recommendation

__all__ = [
    "assumption_line",
    "caution_lines",
    "family_name",
    "figure_lines",
    "follow_up_lines",
    "next_question_message",
    "reach",
    "reach_json",
    "reach_lines",
    "recommendation",
    "sample_request",
    "short_family_name",
    "verdict_line",
    "why_not",
]
