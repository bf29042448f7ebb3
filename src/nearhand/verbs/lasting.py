"""The settings that last: one table for ``set``, its completion, and the reader of the settings file."""

from __future__ import annotations

from collections.abc import Callable

from nearhand.notation.errors import InputError
from nearhand.theory.key import C_MAJOR, pitch_in
from nearhand.theory.record import NamedTuple
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.table import BY_NAME
from nearhand.verbs.verb import Arguments, Verb
from nearhand.verbs.wishing import OFF, SPANS

DEFAULT_WORD = "default"


class Setting(NamedTuple):
    """A setting by the name of the verb that changes it, and how a session has it, in words that the verb takes."""

    name: str
    value_in: Callable[[Session], str]

    @property
    def verb(self) -> Verb:
        """The verb that changes it."""
        return BY_NAME[self.name]

    @property
    def meaning(self) -> str:
        """What it is, in a line."""
        return self.verb.help

    @property
    def default(self) -> str:
        """Its value where nobody has set it."""
        return self.value_in(Session())

    def restores(self, value: str) -> bool:
        """Whether a word takes the setting out: ``default``, or ``off`` where that is no value of its own."""
        return value == DEFAULT_WORD or (value == OFF and "on" not in self.verb.completes)

    def changed(self, session: Session, value: str) -> Outcome:
        """What its verb makes of a value. Raises InputError, placed in the value."""
        words = tuple(value.split())
        return self.verb.run(session, Arguments(value, words, 0 if words else len(value)))


def _convention(name: str) -> Callable[[Session], str]:
    return lambda session: str(getattr(session.conventions, name))


def _switch(is_on: bool) -> str:
    return "on" if is_on else OFF


def _span(session: Session) -> str:
    span = session.wishes.span
    return next((name for name, semitones in SPANS.items() if semitones == span), str(span))


def _register(session: Session) -> str:
    wishes = session.wishes
    if wishes.low is None or wishes.high is None:
        return "moves" if wishes.moves else OFF
    return " ".join(str(pitch_in(C_MAJOR, note)) for note in (wishes.low, wishes.high))


SETTINGS = {
    setting.name: setting
    for setting in (
        *(Setting(name, _convention(name)) for name in ("degrees", "sevenths", "symbols", "figures", "names", "sing")),
        Setting("way", lambda session: session.way),
        Setting("plain", lambda session: _switch(session.conventions.plain)),
        Setting("layout", _convention("layout")),
        Setting("colours", lambda session: session.colours),
        Setting("paging", lambda session: _switch(session.paging)),
        Setting("voice", lambda session: session.wishes.style),
        Setting("left", lambda session: session.wishes.left),
        Setting("span", _span),
        Setting("register", _register),
    )
}
"""Name to setting, in the order in which they are listed and applied."""


def find_setting(name: str, line: str, start: int) -> Setting:
    """The setting of a name. Raises InputError, placed in the line, when there is none."""
    if name in SETTINGS:
        return SETTINGS[name]
    from nearhand.verbs.choices import hint_of

    what, hint = f"there is no setting {name[:30]!r}", hint_of(name, tuple(SETTINGS), "set ")
    raise InputError(what, line, start, start + len(name), wanted="a setting", hint=hint)
