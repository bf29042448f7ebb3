"""``set``: list the settings, keep one for every session to come, or let it go."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.theory.record import NamedTuple
from nearhand.verbs.answers import NoteAnswer, ViewsAnswer
from nearhand.verbs.folders import settings_path
from nearhand.verbs.lasting import SETTINGS, Setting, find_setting
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.settings_file import MEND, broken_in_words, keep_setting, read_settings
from nearhand.verbs.verb import Arguments


class SettingRow(NamedTuple):
    """A setting: its value in the session, the one that is kept (None where none is), its default, its meaning."""

    name: str
    value: str
    kept: str | None
    default: str
    meaning: str


class SettingsAnswer(NamedTuple):
    """Settings, the file they are kept in, and what is wrong with it; empty where nothing is."""

    rows: tuple[SettingRow, ...]
    path: str
    broken: str


def set_setting(session: Session, arguments: Arguments) -> Outcome:
    """List all settings or one of them; with a value, change it here and keep it; with ``default``, let it go.

    Raises InputError, and changes nothing, when there is no such setting or value, or it cannot be kept.
    """
    path = settings_path()
    if not arguments.text.strip():
        return Outcome(session, _listed(tuple(SETTINGS.values()), session, path))
    line, start = arguments.line, arguments.start
    name, *words = arguments.text.split()
    setting = find_setting(name, line, start)
    if not words:
        return Outcome(session, _listed((setting,), session, path))
    value = " ".join(words)
    is_restored = setting.restores(value)
    value = setting.default if is_restored else value
    try:
        outcome = setting.changed(session, value)
    except InputError as error:
        raise _in_line(error, value, line, start + len(name)) from None
    try:
        keep_setting(path, setting, None if is_restored else value)
    except InputError as error:
        raise _not_kept(error) from None
    if arguments.has("json"):
        return outcome._replace(
            answer=_listed((setting,), outcome.session, path), keeps=True, lines=(f"{name} {value}",)
        )
    told = f"{name} is {value} again; nothing is kept." if is_restored else f"{name} {value} is kept in {path}."
    return outcome._replace(answer=_told(outcome.answer, told), keeps=True, lines=(f"{name} {value}",))


def _listed(settings: tuple[Setting, ...], session: Session, path: str) -> SettingsAnswer:
    kept, broken = {}, ""
    try:
        kept = read_settings(path)
    except InputError as error:
        broken = f"{broken_in_words(error)} {MEND[0].upper()}{MEND[1:]}."
    rows = [
        SettingRow(each.name, each.value_in(session), kept.get(each.name), each.default, each.meaning)
        for each in settings
    ]
    return SettingsAnswer(tuple(rows), path, broken)


def _in_line(error: InputError, value: str, line: str, start: int) -> InputError:
    """An error in a value, placed in the whole line where the value stands there as it is."""
    found = line.find(value, start)
    return error.within(line, found) if error.text == value and found >= 0 else error


def _not_kept(error: InputError) -> InputError:
    """The refusal to write to a file that is broken: its sentence names the file; the place is the file's own."""
    if not error.source:
        return error
    error.hint = f"{error.hint}; {MEND}" if error.hint and error.hint != MEND else MEND
    return error


def _told(answer: object, sentence: str) -> object:
    """The answer of a setting's verb with a sentence more."""
    if isinstance(answer, ViewsAnswer):
        return answer._replace(advice=f"{answer.advice} {sentence}".strip())
    return NoteAnswer((sentence,))
