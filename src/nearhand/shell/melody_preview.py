"""What stands below a melody while it is typed: its notes or its degrees, and how far it goes over the chords."""

from __future__ import annotations

from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.counting import counted
from nearhand.notation.melody_reading import read_melody
from nearhand.notation.melody_writing import write_as_degrees, write_as_notes
from nearhand.shell.notes_in_line import TypedNotes
from nearhand.shell.preview_rows import row_of
from nearhand.shell.typed_melody import SoFar, read_so_far
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody
from nearhand.theory.mode import Mode
from nearhand.theory.progression import Bar
from nearhand.verbs.melodies import melody_in
from nearhand.verbs.session import Session
from nearhand.verbs.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.chord import RelativeChord
    from nearhand.theory.progression import Beats

KEY, TO = "key", "to"


def of_notes(verb: Verb, line: str, notes: TypedNotes, session: Session, width: int) -> str:
    """A melody in degrees where names were typed, else in names; below, where the next note falls over the chords.

    Empty where there are no notes yet. Raises InputError, placed in the line.
    """
    so_far = read_so_far(verb, line, notes, session)
    if so_far is None or so_far.session.tune is None:
        return ""
    tune, key = so_far.session.stand
    melody = melody_in(so_far.session, key)
    if melody is None:
        return ""
    conventions = so_far.session.conventions
    has_names = read_melody(so_far.text).keyless is None
    row = _row(melody, key, conventions, width, tune.key.mode if has_names else None)
    return "\n".join(text for text in (row, _place(melody, so_far, width)) if text)


def of_moved_notes(verb: str, key: Key, session: Session, width: int) -> str:
    """The melody on the stand in a key: its notes where it goes there, its degrees where it is read there.

    Raises InputError where a note would lie outside the MIDI numbers.
    """
    if verb == KEY:
        session = session.with_tune(session.stand[0].read_in(key))
    melody = melody_in(session.moved_to(key), key)
    return "" if melody is None else _row(melody, key, session.conventions, width, key.mode if verb == KEY else None)


def _row(melody: Melody, key: Key, conventions: Conventions, width: int, mode: Mode | None) -> str:
    """The notes that sound, as degrees of a mode or, without one, as names; empty where there are only rests."""
    write = write_as_notes(melody.tonic, conventions) if mode is None else write_as_degrees(mode, conventions)
    written = tuple(write(note.interval) for note in melody.sounding())
    return row_of(key, written, conventions, width) if written else ""


def _place(melody: Melody, so_far: SoFar, width: int) -> str:
    """Where the next note falls, and over which chord, as far as there is room; empty where there are no chords."""
    tune, key = so_far.session.stand
    bars = tune.progression.bars
    if not bars:
        return ""
    number, onset = _next_place(melody, so_far.text)
    whole = counted(len(bars), "bar")
    if number > len(bars):
        return f"all of {whole}"[:width]
    chord = _chord_at(bars[number - 1], onset)
    over = f", over {write_chord(chord.in_key(key), so_far.session.conventions)}" if chord is not None else ""
    place = f"next: bar {number}, beat {_beat(onset)} of {whole}"
    return next((row for row in (place + over, place) if len(row) <= width), "")


def _next_place(melody: Melody, text: str) -> tuple[int, Beats]:
    """The bar that the next note falls in, and the beats of it that are filled."""
    last = melody.bars[-1]
    number = len(melody.bars) - melody.has_pickup
    is_pickup = len(melody.bars) == 1 and text.rstrip().endswith(("|", ":"))
    if is_pickup and last.is_short:
        return 1, 0
    return (number, last.beats) if last.is_short else (number + 1, 0)


def _chord_at(bar: Bar, onset: Beats) -> RelativeChord | None:
    """The chord that sounds after some beats of a bar."""
    for slot in bar.slots:
        if onset < slot.beats:
            return slot.chord
        onset -= slot.beats
    return None


def _beat(onset: Beats) -> str:
    """The beat that begins after some beats, from 1.

    >>> from fractions import Fraction
    >>> _beat(0), _beat(Fraction(3, 2))
    ('1', '2 1/2')
    """
    whole, rest = divmod(onset, 1)
    return f"{whole + 1} {rest}" if rest else str(whole + 1)
