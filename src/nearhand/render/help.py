"""Help, printed from the table of verbs."""

from __future__ import annotations

from nearhand.render.page import Cell, Line, Page, line, wrapped
from nearhand.verbs.keeping import HelpAnswer
from nearhand.verbs.meanings import meanings_of
from nearhand.verbs.table import VERBS
from nearhand.verbs.verb import Verb

_SHELL_INTRO = (
    "Type chords, and they are shown at once: | Em | Bm/D | Am/C | B7 |",
    "Numerals and numbers need a key in front: E minor: i v6 iv6 V7",
)
_SHELL_OUTRO = "Ctrl-C clears the line, Ctrl-D leaves."
_COMMAND_INTRO = (
    "nearhand moves chord progressions between keys. Alone it opens a shell; with a verb it answers once.",
    'A chart is chords in quotes ("| Em | B7 |"), a chart file, or - for standard input.',
)
CARE = (
    "Stretches and repetition tire the hands: rest often, stop when it hurts, "
    "and ask a teacher or a clinician about pain that stays."
)


def draw_help(answer: HelpAnswer, page: Page) -> list[Line]:
    """Help on one verb, or the list of verbs."""
    return _draw_verb(answer.verb, page) if answer.verb else _draw_all(answer.in_shell, page)


def _draw_all(in_shell: bool, page: Page) -> list[Line]:
    verbs = [verb for verb in VERBS if in_shell or verb.one_shot]
    lines = [part for text in (_SHELL_INTRO if in_shell else _COMMAND_INTRO) for part in wrapped(text, page.width)]
    lines.append(line())
    width = max(len(f"{verb.name} {verb.follows}") for verb in verbs) + 2
    for verb in verbs:
        use = f"{verb.name} {verb.follows}".rstrip()
        if width + len(verb.help) + 2 <= page.width:
            lines.append(line("  ", Cell(use.ljust(width), "chord"), verb.help))
        else:
            lines += [line("  ", Cell(use, "chord")), *wrapped(verb.help, page.width, 6)]
    lines.append(line())
    more = (
        "help VERB tells more, for example: help show."
        if in_shell
        else "nearhand VERB --help tells more; nearhand --version."
    )
    for text in (f"{more} {_SHELL_OUTRO}" if in_shell else more, CARE):
        lines += wrapped(text, page.width, role="hint")
    return lines


def _draw_verb(verb: Verb, page: Page) -> list[Line]:
    lines = [line(Cell(f"{verb.name} {verb.follows}".rstrip(), "chord"))]
    lines += wrapped(verb.help, page.width, 2)
    for option in verb.options:
        lines.append(line("  ", Cell(f"--{option.name} {option.value}".rstrip(), "numeral")))
        lines += wrapped(option.help, page.width, 6)
    for word, meaning in meanings_of(verb.name):
        lines.append(line("  ", Cell(word, "numeral")))
        lines += wrapped(meaning, page.width, 6)
    for example in verb.examples:
        lines += wrapped(f"for example: {example}", page.width, 2, role="hint")
    return lines
