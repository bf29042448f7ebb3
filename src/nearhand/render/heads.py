"""What stands above a page: a tune's title, how its key was found, a key with its signature and its distance."""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.harmony.moving import distance_in_words, way_in_words
from nearhand.notation.conventions import Conventions
from nearhand.notation.counting import counted
from nearhand.notation.keys import key_name
from nearhand.notation.notes import note_name
from nearhand.render.page import Cell, Line, Page, line, wrapped
from nearhand.theory.key import Key
from nearhand.theory.pitch import interval_between
from nearhand.verbs.tune import INFERRED, Tune

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.melody import Melody


def head(tune: Tune, conventions: Conventions, page: Page, introduces: bool) -> list[Line]:
    """A tune's title, and how its key was found where the tune is new to the player."""
    lines: list[Line] = []
    if tune.title:
        tempo = f", {tune.tempo_bpm} beats a minute" if tune.tempo_bpm else ""
        lines += wrapped(tune.title + tempo, page.width, role="title")
    if introduces and tune.key_source == INFERRED and tune.runner_up is not None:
        key, second = (key_name(name, conventions) for name in (tune.key, tune.runner_up))
        what = "chords" if tune.progression.bars else "notes"
        lines += wrapped(f"The {what} seem to be in {key}; next likeliest is {second}.", page.width, role="hint")
    return lines


def key_line(key: Key, tune: Tune, conventions: Conventions, page: Page, melody: Melody | None = None) -> list[Line]:
    """A key with its signature and its distance from the tune's own; and that of its melody, if it goes elsewhere."""
    name = key_name(key, conventions)
    facts = [_signature(key, conventions), *_distances(key, tune, conventions, melody)]
    parts = wrapped(f"{name}: {', '.join(facts)}", page.width)
    first = parts[0][0].text
    return [line(Cell(first[: len(name)], "key"), first[len(name) :]), *parts[1:]]


def _distances(key: Key, tune: Tune, conventions: Conventions, melody: Melody | None) -> Iterator[str]:
    """Which way the music went, and its melody where that went another way."""
    shortest = distance_in_words(tune.key, key)
    moved = shortest
    if melody is not None and tune.melody is not None:
        moved = way_in_words(interval_between(tune.melody.tonic, melody.tonic))
    own = f"from {key_name(tune.key, conventions)}"
    is_alone = not tune.progression.bars
    if key != tune.key or (is_alone and moved != shortest):
        yield f"{moved if is_alone else shortest} {own}"
    if not is_alone and moved != shortest:
        yield f"the melody {moved}"


def _signature(key: Key, conventions: Conventions) -> str:
    if not key.signature:
        return "no sharps or flats"
    letters = " ".join(note_name(note, conventions) for note in key.altered_letters)
    return f"{signature_in_figures(key)} ({letters})"


def signature_in_figures(key: Key) -> str:
    """How many sharps or flats a signature has, which has some.

    >>> from nearhand.notation.keys import parse_key
    >>> signature_in_figures(parse_key("Eb")), signature_in_figures(parse_key("G"))
    ('3 flats', '1 sharp')
    """
    return counted(abs(key.signature), "sharp" if key.signature > 0 else "flat")
