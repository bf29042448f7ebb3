"""``help``: on a verb, on a topic, or in short. ``run``: an example of what was taught last."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.theory.record import NamedTuple
from nearhand.verbs.session import Lesson, Outcome, Session
from nearhand.verbs.verb import Arguments

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.verbs.topics import Topic
    from nearhand.verbs.verb import Verb

EVERYTHING = ("everything", "verbs")


class HelpAnswer(NamedTuple):
    """Help on a verb, on a topic, on both where a word names both; on everything, or, with none of them, in short."""

    verb: Verb | None
    in_shell: bool
    topic: Topic | None = None
    everything: bool = False


class RunAnswer(NamedTuple):
    """An example's line with its answer, and what to type next."""

    line: str
    answer: object
    hint: str = ""


def give_help(session: Session, arguments: Arguments) -> Outcome:
    """Explain the verbs in short, or one of them, or a topic; the topic's examples can be run.

    Raises InputError where there is neither such a verb nor such a topic.
    """
    answer = help_on(arguments.text, arguments.line, arguments.start, in_shell=True)
    examples = () if answer.topic is None else answer.topic.examples
    return Outcome(session._replace(lesson=session.lesson._replace(examples=examples)), answer, keeps=True)


def help_on(text: str, line: str, start: int, in_shell: bool) -> HelpAnswer:
    """The help that a text asks for, which begins at ``start`` in ``line``; in short for an empty one.

    Raises InputError with the nearest name where there is neither such a verb nor such a topic.
    """
    from nearhand.verbs.table import BY_NAME
    from nearhand.verbs.topics import find_topic

    if not text or text in EVERYTHING:
        return HelpAnswer(None, in_shell, everything=bool(text))
    verb, topic = BY_NAME.get(text), find_topic(text)
    if verb is None and topic is None:
        what = f"{text[:40]!r} is neither a verb nor a topic"
        raise InputError(what, line, start, wanted="a verb or a topic", hint=_nearest(text))
    return HelpAnswer(verb, in_shell, topic)


def _nearest(text: str) -> str:
    """A hint that names the verb or topic nearest to a text."""
    from difflib import get_close_matches

    from nearhand.verbs.table import BY_NAME
    from nearhand.verbs.topics import BY_TOPIC

    near = get_close_matches(text[:40].lower(), (*BY_NAME, *BY_TOPIC, *EVERYTHING), n=1)
    return f"did you mean help {near[0]}?" if near else "help alone lists the verbs and the topics"


def run_example(session: Session, arguments: Arguments) -> Outcome:
    """Answer an example of the last help or step of the tour, as if it were typed.

    Raises InputError.
    """
    from nearhand.verbs.pitches import read_number
    from nearhand.verbs.respond import respond

    lesson, line = session.lesson, arguments.line
    count = len(lesson.examples)
    if not count:
        hint = "help minor, or help on any other topic, has some; so has tour"
        raise InputError("there is no example to run", line, hint=hint)
    number = 1
    if arguments.words:
        try:
            number = read_number(arguments.text, "an example's number", f"write run {min(2, count)}")
        except InputError as error:
            raise error.within(line, arguments.start) from None
    if not 1 <= number <= count:
        numbered = f"the examples are numbered 1 to {count}" if count > 1 else "there is one example: run 1"
        raise InputError(f"there is no example {number}", line, arguments.start, hint=numbered)
    example = lesson.examples[number - 1]
    ready = session if session.tune is not None or not lesson.chart else respond(session, lesson.chart).session
    outcome = respond(ready, example)
    return outcome._replace(answer=RunAnswer(example, outcome.answer, _what_next(lesson)))


def _what_next(lesson: Lesson) -> str:
    from nearhand.verbs.touring import STEPS

    if not lesson.step or lesson.examples != (STEPS[lesson.step - 1].example,):
        return ""
    if lesson.step < len(STEPS):
        return f"tour next goes to step {lesson.step + 1} of {len(STEPS)}."
    return "That was the tour: type chords of your own, or help."
