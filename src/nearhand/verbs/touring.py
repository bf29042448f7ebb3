"""``tour``: ten steps that show around, each with a line to type; the chords are invented for it."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.theory.record import NamedTuple
from nearhand.verbs.choices import hint_of
from nearhand.verbs.session import Lesson, Outcome, Session
from nearhand.verbs.verb import Arguments

CHART = "| Em | Bm/D | Am/C | B7 |"


class Step(NamedTuple):
    """A step of the tour: what it is about, what happens and why, and the line to type."""

    title: str
    text: str
    example: str


class TourAnswer(NamedTuple):
    """A step of the tour with its number, from 1, of how many."""

    number: int
    steps: int
    step: Step


STEPS = (
    Step(
        "Chords",
        "Type chords between bar lines. The key is found; below each chord stand its numeral, its number, and the "
        "notes of two hands that move as little as possible.",
        CHART,
    ),
    Step(
        "Another key",
        "The same chords in another key, spelled as that key spells them: the minor v has B flat, V7 has B natural.",
        "to C minor",
    ),
    Step(
        "Round the circle",
        "next goes a fifth down, back a fifth up, home to where you began: all keys, one after the other.",
        "next",
    ),
    Step(
        "Several keys at once",
        "show answers in as many keys as you name, and leaves you where you are. to all gives the twelve.",
        'show --to "A minor,D minor" --voicing none',
    ),
    Step(
        "What chords do",
        "explain says where each chord comes from and where it pulls; a number asks about one chord alone.",
        "explain 4",
    ),
    Step(
        "Another chord",
        "instead tells what else fits in place of a chord, the nearest first. borrow lists what other modes lend.",
        "instead 3",
    ),
    Step(
        "A melody",
        "melody puts a tune over the chords, in numbers, syllables or names; it goes along to every key. - holds a "
        "note, _ is an octave below; 7 is low over the minor v, raised as #7 over V7. help melodies tells more.",
        "melody 5 - 3 1 | 2 - 7_ - | 1 - 4 3 | 2 - #7_ -",
    ),
    Step(
        "Numerals and numbers",
        "A chart may be written in numerals or numbers, with the key in front. help numerals and help numbers tell "
        "more.",
        "A minor: | i | iv6 | V7 | i |",
    ),
    Step(
        "Under the hands",
        "voice takes another family of voicings: open, drop2, shell, four-part and more. lines writes each voice by "
        "itself, why 2 tells what another voicing would cost. Stop when a stretch hurts.",
        "voice drop2",
    ),
    Step(
        "Back again",
        "undo takes back any change, redo makes it again. save FILE keeps the chart in the key you see, open FILE "
        "brings it back.",
        "undo",
    ),
)
WALKS = ("next", "back")


def tour(session: Session, arguments: Arguments) -> Outcome:
    """Show a step of the tour: the first, the one of a number, the next one or the one before.

    Raises InputError.
    """
    number = _number(arguments, session.lesson.step)
    step = STEPS[number - 1]
    lesson = Lesson((step.example,), number, "" if number == 1 else CHART)
    return Outcome(session._replace(lesson=lesson), TourAnswer(number, len(STEPS), step))


def _number(arguments: Arguments, current: int) -> int:
    text, line, start = arguments.text, arguments.line, arguments.start
    if not text:
        return 1
    if text in WALKS:
        number = current + (1 if text == "next" else -1)
        if 1 <= number <= len(STEPS):
            return number
        where = "this is the last step" if text == "next" else "this is the first step"
        raise InputError(where if current else "the tour has not begun", line, start, hint="tour begins at the first")
    if text.isascii() and text.isdigit():
        number = int(text[:6])
        if 1 <= number <= len(STEPS):
            return number
        raise InputError(f"there is no step {text[:6]}", line, start, hint=f"the steps are numbered 1 to {len(STEPS)}")
    hint = hint_of(text, WALKS, "tour ")
    raise InputError(f"{text[:30]!r} cannot follow tour", line, start, wanted="a step's number", hint=hint)
