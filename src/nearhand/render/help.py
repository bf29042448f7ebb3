"""Help, printed from the tables of verbs and topics; the steps of the tour; examples with their answers."""

from __future__ import annotations

from nearhand.render.page import WIDE_ENOUGH_FOR_LABELS, Cell, Line, Page, line, wrapped
from nearhand.verbs.helping import HelpAnswer, RunAnswer
from nearhand.verbs.meanings import meanings_of
from nearhand.verbs.table import VERBS
from nearhand.verbs.touring import TourAnswer
from nearhand.verbs.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.verbs.topics import Topic

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
_INDENT = 2


def draw_help(answer: HelpAnswer, page: Page) -> list[Line]:
    """Help on a verb, a topic or both; on everything; or in short."""
    parts = [_draw_topic(answer.topic, answer.in_shell, page)] if answer.topic else []
    parts += [_draw_verb(answer.verb, page)] if answer.verb else []
    if parts:
        return [*parts[0], *(part for lines in parts[1:] for part in (line(), *lines))]
    return _draw_all(answer.in_shell, page) if answer.everything or not answer.in_shell else _draw_short(page)


def draw_tour(answer: TourAnswer, page: Page) -> list[Line]:
    """A step of the tour: its number and title, what happens, and the line to type."""
    step = answer.step
    return [
        *wrapped(f"Step {answer.number} of {answer.steps}: {step.title}", page.width, role="title"),
        *wrapped(step.text, page.width),
        *wrapped("Type this line, or run:", page.width, role="hint"),
        *wrapped(step.example, page.width, _INDENT, role="chord"),
    ]


def draw_run(answer: RunAnswer, page: Page) -> list[Line]:
    """An example as it would have been typed, its answer, and what comes next."""
    from nearhand.render.answers import draw

    lines = [*wrapped(f"> {answer.line}", page.width, role="chord"), *draw(answer.answer, page)]
    return [*lines, *wrapped(answer.hint, page.width, role="hint")]


def _draw_short(page: Page) -> list[Line]:
    """The verbs by what one does with them, the topics, and where to read on."""
    from nearhand.verbs.groups import groups
    from nearhand.verbs.topics import TOPICS

    rows = [*groups(), ("topics", tuple(topic.name for topic in TOPICS))]
    lines = [part for text in _SHELL_INTRO for part in wrapped(text, page.width)]
    width = max(len(name) for name, _ in rows) + 2
    for name, words in rows:
        told = ", ".join(words)
        if page.width >= WIDE_ENOUGH_FOR_LABELS:
            lines += _labelled(name, width, wrapped(told, page.width, width, role="chord"))
        else:
            lines += _labelled(f"{name}:", len(name) + 1, wrapped(f"{name}: {told}", page.width, role="chord"))
    more = "help VERB or TOPIC tells more, help everything lists all, tour shows around."
    for text in (f"{more} {_SHELL_OUTRO}", CARE):
        lines += wrapped(text, page.width, role="hint")
    return lines


def _labelled(label: str, width: int, lines: list[Line], role: str = "label") -> list[Line]:
    """Lines, of whose first one the columns up to a width are a label."""
    (first,), *others = lines
    return [line(Cell(label.ljust(width), role), Cell(first.text[width:], first.role)), *others]


def _draw_all(in_shell: bool, page: Page) -> list[Line]:
    verbs = [verb for verb in VERBS if in_shell or verb.one_shot]
    lines = [part for text in (_SHELL_INTRO if in_shell else _COMMAND_INTRO) for part in wrapped(text, page.width)]
    lines.append(line())
    width = max(len(f"{verb.name} {verb.follows}") for verb in verbs) + 2
    for verb in verbs:
        use = verb.usage
        if width + len(verb.help) + 2 <= page.width:
            lines.append(line("  ", Cell(use.ljust(width), "chord"), verb.help))
        else:
            lines += [line("  ", Cell(use, "chord")), *wrapped(verb.help, page.width, 6)]
    lines.append(line())
    more = (
        f"help VERB tells more, for example: help show. {_SHELL_OUTRO}"
        if in_shell
        else "nearhand VERB --help tells more; so does nearhand help TOPIC, for example: nearhand help minor."
    )
    for text in (more, CARE):
        lines += wrapped(text, page.width, role="hint")
    return lines


def _draw_verb(verb: Verb, page: Page) -> list[Line]:
    lines = [line(Cell(verb.usage, "chord"))]
    lines += wrapped(verb.help, page.width, _INDENT)
    for option in verb.options:
        lines.append(line("  ", Cell(option.usage, "numeral")))
        lines += wrapped(option.help, page.width, 6)
    for word, meaning in meanings_of(verb.name):
        lines.append(line("  ", Cell(word, "numeral")))
        lines += wrapped(meaning, page.width, 6)
    for example in verb.examples:
        lines += wrapped(f"for example: {example}", page.width, _INDENT, role="hint")
    return lines


def _draw_topic(topic: Topic, in_shell: bool, page: Page) -> list[Line]:
    """A topic: its paragraphs, its rows, and its examples with their numbers."""
    lines = wrapped(f"{topic.name}: {topic.summary}", page.width, role="title")
    for text in topic.text:
        lines += wrapped(text, page.width, _INDENT)
    width = max((len(word) for word, _ in topic.rows), default=0) + 2 * _INDENT
    for word, meaning in topic.rows:
        lines += _labelled(f"  {word}", width, wrapped(meaning, page.width, width), "numeral")
    if topic.examples:
        told = "Examples; run 1 answers the first, undo brings back what you had:" if in_shell else "In the shell:"
        lines += wrapped(told, page.width, role="hint")
    for number, example in enumerate(topic.examples, start=1):
        lines += _labelled(f"{number:3d}", 5, wrapped(example, page.width, 5, role="chord"))
    return lines
