"""A melody's text as values: names, degrees and syllables as intervals above the tonic, in bars of a meter."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.notation.conventions import DEFAULT, NATURAL, Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.keys import MODE_WORDS, parse_key
from nearhand.notation.melody_bars import Read, bars_of_melody
from nearhand.notation.melody_intervals import HINT, NoteReader, needs_key
from nearhand.notation.melody_minor import signs_in_form
from nearhand.notation.melody_signs import Grace, Sign, signs_of_melody
from nearhand.theory.key import C_MAJOR, Key
from nearhand.theory.melody import Melody
from nearhand.theory.progression import COMMON_TIME, Meter
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.interval import Interval


_PUT_A_KEY = 'put the key in front, as in "G: 5 3 1", or write note names'


class WrittenMelody(NamedTuple):
    """A melody as written, before any key is known: its text, its signs, and the key named in front of them."""

    text: str
    signs: tuple[Sign, ...]
    key: Key | None

    @property
    def keyless(self) -> Sign | Grace | None:
        """The first note that needs a key, a degree or a movable syllable; None when all are names."""
        for sign in self.signs:
            for grace in sign.graces:
                if needs_key(grace.text):
                    return grace
            if sign.kind == "note" and needs_key(sign.text):
                return sign
        return None


def read_melody(text: str) -> WrittenMelody:
    """Cut a melody's text into signs; the notes themselves are read by ``resolve_melody``.

    Raises InputError; also when there is no note.

    >>> melody = read_melody("G: 5_ | 1 2 [3 4] 5 |")
    >>> str(melody.key), melody.keyless.text
    ('G major', '5_')
    """
    key, start = key_in_front(text)
    signs = signs_of_melody(text, start)
    if not any(sign.kind == "note" for sign in signs):
        raise InputError("there are no notes here", text, len(text), wanted="notes", hint=HINT)
    return WrittenMelody(text, signs, key)


def key_in_front(text: str) -> tuple[Key | None, int]:
    """The key before the first colon, where a blank, a bar line or a bracket follows: other colons are lengths.

    Raises InputError for what is no key, where nothing but a key can be meant.
    """
    colon = text.find(":")
    behind = text[colon + 1 : colon + 2]
    if colon < 0 or "|" in text[:colon] or not (behind.isspace() or behind in ("", "|", "[", "{")):
        return None, 0
    try:
        return parse_key(text[:colon]), colon + 1
    except InputError as error:
        meter, _, key = text[:colon].strip().partition("]")
        if meter.startswith("[") and "/" in meter and key.strip() and behind.isspace():
            what, hint = "the key stands before the meter", f"write {key.strip()}: {meter}] and the notes"
            raise InputError(what, text, 0, colon, wanted="a key", hint=hint) from None
        if not behind.isspace() or text[colon - 1].isspace():
            return None, 0
        raise error.within(text, 0) from None


def resolve_melody(  # noqa: PLR0913  # where a melody stands takes many facts
    written: WrittenMelody,
    key: Key,
    meters: Sequence[Meter] = (),
    meter: Meter = COMMON_TIME,
    conventions: Conventions = DEFAULT,
    *,
    held: Interval | None = None,
) -> Melody:
    """Read a melody's notes in a key, and put them in bars: of ``meters`` in turn, then of ``meter``.

    ``held``: the note that sounds when the melody begins, which a hold may hold on. Raises InputError, placed in the
    melody's text: also at a bar that is too long or too short, and at a note outside the MIDI numbers.

    >>> from nearhand.notation.keys import parse_key
    >>> melody = resolve_melody(read_melody("5_ | 1 2 [3 4] 5 |"), parse_key("G"))
    >>> [str(note.pitch) for note in melody.sounding()], melody.has_pickup
    (['D3', 'G3', 'A3', 'B3', 'C4', 'D4'], True)
    """
    reader = NoteReader(written.text, key, conventions)
    signs: list[tuple[Sign, Read]] = [
        (sign, reader.note(sign)) if sign.kind == "note" else (sign, None) for sign in written.signs
    ]
    if conventions.minor != NATURAL and key.mode.is_minor and conventions.degrees == "mode":
        signs = signs_in_form(signs, conventions.minor)
        for sign, read in signs:
            reader.check(sign, read)
    return Melody(reader.tonic, bars_of_melody(written.text, signs, meters, meter, held), reader.has_octaves)


def parse_melody(text: str, key: Key | None = None, conventions: Conventions = DEFAULT) -> Melody:
    """Read a melody in a key: the one named in front of it, or ``key``, or C major where neither is there.

    Raises InputError; also for degrees without a key.

    >>> [str(note.pitch) for note in parse_melody("E4 F#4, G").sounding()]
    ['E4', 'F#4', 'G4']
    """
    written = read_melody(text)
    named = written.key or key
    if named is None and written.keyless is not None:
        raise no_key_for(written, written.keyless)
    return resolve_melody(written, named or C_MAJOR, conventions=conventions)


def only_rests(text: str) -> InputError:
    """The refusal of a melody whose notes are asked for, and which has none."""
    return InputError("there are only rests here", text, len(text), wanted="notes", hint="write notes: E4 G4 B4")


def no_key_for(written: WrittenMelody, sign: Sign | Grace) -> InputError:
    """The refusal of a degree or a syllable where no key is known, or of what is no note before it."""
    reader = NoteReader(written.text, C_MAJOR, DEFAULT)
    try:
        for other in written.signs:
            if other.kind == "note" and other.start < sign.start:
                reader.note(other)
    except InputError as error:
        return error
    what, hint = f"{sign.text[:24]} needs a key to be read in", _PUT_A_KEY
    if sign.text.lower() in MODE_WORDS:
        what, hint = f"{sign.text!r} is no note", f"put a colon behind the key, as in E {sign.text}: 1 2 3"
    return InputError(what, written.text, sign.start, sign.start + len(sign.text), wanted="a key", hint=hint)
