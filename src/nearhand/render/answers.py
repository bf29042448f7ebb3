"""Every kind of answer as lines of cells."""

from __future__ import annotations

from importlib import import_module

from nearhand.notation.conventions import SPOKEN, Conventions
from nearhand.notation.notes import note_name
from nearhand.render.heads import head, key_line
from nearhand.render.keyboard import LEGEND
from nearhand.render.page import WIDE_ENOUGH_FOR_LABELS, Line, Page, line, wrapped
from nearhand.render.system import MOVES_LEGEND, draw_view, rows_of
from nearhand.theory.pitch_class import pitch_class
from nearhand.verbs.answers import NoteAnswer, View, ViewsAnswer
from nearhand.verbs.tune import Tune

_DRAWN_ELSEWHERE = {
    "BorrowAnswer": "borrowing_page.draw_palette",
    "CadencesAnswer": "cadences_page.draw_cadences",
    "CompletionAnswer": "completion_page.draw_completion",
    "DifficultyAnswer": "difficulty_page.draw_difficulty",
    "ExplainAnswer": "explain_page.draw_explanations",
    "MelodyAnswer": "melody_page.draw_melody",
    "LinesAnswer": "lines_page.draw_lines",
    "OthersAnswer": "paths_page.draw_paths",
    "PartsAnswer": "parts_page.draw_parts",
    "SingerAnswer": "singer_page.draw_singer",
    "WhyAnswer": "paths_page.draw_why",
    "HelpAnswer": "help.draw_help",
    "InsteadAnswer": "substitutes_page.draw_substitutes",
    "KeysAnswer": "keys_page.draw_keys",
    "ListAnswer": "list_page.draw_list",
    "RecentAnswer": "list_page.draw_recent",
    "SettingsAnswer": "settings_page.draw_settings",
    "TonesAnswer": "tones_page.draw_tones",
    "RunAnswer": "help.draw_run",
    "TourAnswer": "help.draw_tour",
}
"""Kind of answer to ``module.function`` of this room; imported when one is drawn."""


def draw(answer: object, page: Page) -> list[Line]:
    """Draw any answer; where its notes have other names than English ones, a last sentence says so.

    Raises TypeError for a value that is none.
    """
    conventions = getattr(answer, "conventions", None)
    if conventions is None or conventions.names == "english":
        return _drawn(answer, page)
    from nearhand.notation.note_names import WHICH

    page = page._replace(name_of_c=note_name(pitch_class(0), conventions))
    return _drawn(answer, page) + wrapped(WHICH[conventions.names], page.width, role="hint")


def _drawn(answer: object, page: Page) -> list[Line]:
    conventions: Conventions | None = getattr(answer, "conventions", None)
    if conventions is not None and conventions.layout == SPOKEN:
        from nearhand.render.spoken import draw_spoken, is_spoken

        if is_spoken(answer):
            return draw_spoken(answer, page)
    if isinstance(answer, ViewsAnswer):
        return _draw_views(answer, page)
    elsewhere = _DRAWN_ELSEWHERE.get(type(answer).__name__)
    if elsewhere is not None:
        module, _, function = elsewhere.partition(".")
        lines: list[Line] = getattr(import_module(f"nearhand.render.{module}"), function)(answer, page)
        return lines
    if isinstance(answer, NoteAnswer):
        return [part for text in answer.lines for part in wrapped(text, page.width)]
    raise TypeError(f"no answer: {type(answer).__name__}")


def _draw_views(answer: ViewsAnswer, page: Page) -> list[Line]:
    tune, conventions = answer.tune, answer.conventions
    lines = head(tune, conventions, page, answer.introduces)
    for place, view in enumerate(answer.views):
        if place:
            lines.append(line())
        lines += key_line(view.key, tune, conventions, page, view.melody)
        lines += draw_view(view, conventions, page)
        lines += total(view, conventions, page)
        lines += _melody(view, tune, conventions, page)
    lines += _legend(answer.views[0], conventions, page)
    for remark in (*(tune.all_remarks if answer.introduces else ()), answer.advice):
        lines += wrapped(remark, page.width, role="hint")
    return lines


def _melody(view: View, tune: Tune, conventions: Conventions, page: Page) -> list[Line]:
    """The melody of a view, below its chords."""
    if view.melody is None:
        return []
    from nearhand.render.melody_page import melody_lines
    from nearhand.verbs.answers import MelodyView

    lines = [line()] if view.chords else []
    return lines + melody_lines((MelodyView(view.key, view.melody),), view.bars, tune.key, conventions, page)


def total(view: View, conventions: Conventions, page: Page) -> list[Line]:
    """How far a view's voices move, and what else is to be said of its path."""
    voiced = view.voiced
    if voiced is None or not voiced.voicings:
        return []
    from nearhand.voicing.words import movement_sentence

    lines = wrapped(movement_sentence(voiced), page.width, role="total")
    if voiced.is_plain:
        return lines
    from nearhand.voicing.remarks import remarks_on

    return lines + [part for text in remarks_on(voiced, conventions) for part in wrapped(text, page.width)]


def _legend(view: View, conventions: Conventions, page: Page) -> list[Line]:
    lines: list[Line] = []
    if view.melody is not None:
        from nearhand.render.melody_page import legend_of

        lines += wrapped(legend_of(conventions, view.key.mode), page.width, role="label")
    if page.width < WIDE_ENOUGH_FOR_LABELS and view.chords:
        lines += wrapped(f"rows: {', '.join(rows_of(view))}", page.width, role="label")
    if view.voiced:
        reached = any(voicing.candidate.reached for voicing in view.voiced.voicings)
        moves = MOVES_LEGEND.replace("per voice", "per upper voice, low to high") if reached else MOVES_LEGEND
        lines += wrapped(f"{moves}; {LEGEND}", page.width, role="label")
    return lines
