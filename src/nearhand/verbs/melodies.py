"""Tunes with melodies: a melody alone, one over the chords that are there, and where it lies in another key."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.counting import counted
from nearhand.notation.errors import InputError
from nearhand.notation.melody_reading import WrittenMelody, no_key_for, only_rests, read_melody, resolve_melody
from nearhand.notation.melody_remarks import remarks_on_melody
from nearhand.theory.interval import Interval
from nearhand.theory.key import C_MAJOR, Key
from nearhand.theory.melody import DOWNWARD, HIGHEST, NEAREST, UPWARD, Melody, MelodyBar, MelodyNote, tonic_near
from nearhand.theory.progression import COMMON_TIME, Bar, Meter, Progression
from nearhand.verbs.answers import MelodyAnswer, MelodyView
from nearhand.verbs.care import care_in
from nearhand.verbs.session import Session
from nearhand.verbs.tune import GIVEN, INFERRED, Tune

OTHER_KEY_HINT = "leave the key out to put the melody over these chords, or add --alone to put them away"


def melody_tune(
    text: str,
    key: Key | None = None,
    conventions: Conventions = DEFAULT,
    known: Key | None = None,
    meter: Meter = COMMON_TIME,
) -> Tune:
    """A tune of a melody alone. Its key is the one in front of it, ``key``, or inferred from names of notes.

    Degrees and syllables, from which none can be inferred, are read in the ``known`` key. Raises InputError; also when
    there are degrees and no key is known.

    >>> tune = melody_tune("D4 E F# G | A - G F# | E - A3 - | D4 - - -")
    >>> str(tune.key), tune.key_source
    ('D major', 'inferred')
    """
    written = read_melody(text)
    named = key or written.key
    if named is None and written.keyless is not None:
        if known is None:
            raise no_key_for(written, written.keyless)
        named = known
    if named is not None:
        melody = resolve_melody(written, named, (), meter, conventions).well_counted()
        remarks = remarks_on_melody(written, named, conventions)
        return Tune(Progression(named, ()), GIVEN, melody=melody, melody_remarks=remarks)
    best, second = inferred_keys([(written, meter)], conventions)
    melody = resolve_melody(written, best, (), meter, conventions).well_counted()
    return Tune(Progression(best, ()), INFERRED, second, melody=melody)


def inferred_keys(melodies: Sequence[tuple[WrittenMelody, Meter]], conventions: Conventions) -> tuple[Key, Key]:
    """The likeliest key of melodies in names of notes that follow one another, and the next.

    Raises InputError where there are only rests.
    """
    from nearhand.harmony.melody_keys import rank_keys_of_melody

    notes = [
        note
        for written, meter in melodies
        for note in resolve_melody(written, C_MAJOR, (), meter, conventions).sounding()
    ]
    if not notes:
        raise only_rests(melodies[0][0].text)
    fits = rank_keys_of_melody([note.pitch.pitch_class for note in notes], [note.beats for note in notes])
    return fits[0].key, fits[1].key


def over_chords(
    tune: Tune, text: str, shown: Key | None = None, conventions: Conventions = DEFAULT, way: str = NEAREST
) -> Tune:
    """A tune with a melody over its chords, which is written in the key that is shown, the tune's own or another.

    ``way``: how melodies go from the one key to the other. Raises InputError; also when the melody is in another key,
    or longer than the chords.

    >>> from nearhand.verbs.tune import tune_from_text
    >>> tune = over_chords(tune_from_text("| C | F | G7 | C |"), "5_ | 1 2 3 5 | 6 - 4 6 | 5 - b7_ 7_ | 1 - -")
    >>> [str(note.pitch) for note in tune.in_key(Key(tune.key.tonic.up(-1), tune.key.mode)).melody.sounding()][:4]
    ['C4', 'F4', 'G4', 'A4']
    """
    shown = shown or tune.key
    written = read_melody(text)
    if written.key is not None and written.key != shown:
        end = text.find(":")
        what = f"the chords are in {shown}, and this melody is in {written.key}"
        raise InputError(what, text, 0, end, wanted=f"a melody in {shown}", hint=OTHER_KEY_HINT)
    bars = tune.progression.bars
    meters = [bar.meter for bar in bars]
    melody = resolve_melody(written, shown, meters, _last_meter(bars), conventions).well_counted()
    refuse_longer(melody, len(bars), written)
    home = _brought_home(melody, tune.key, shown, way, written)
    return tune._replace(melody=home, melody_remarks=remarks_on_melody(written, shown, conventions))


def _last_meter(bars: Sequence[Bar]) -> Meter:
    return bars[-1].meter if bars else COMMON_TIME


def refuse_longer(melody: Melody, count: int, written: WrittenMelody) -> None:
    """Raise InputError where a melody has more bars than the chords under it, pickup aside."""
    bars = len(melody.bars) - melody.has_pickup
    if bars > count:
        what = f"the melody has {counted(bars, 'bar')}, the chords have {counted(count, 'bar')}"
        hint = "add chords, shorten the melody, or add --alone to put the chords away"
        raise InputError(what, written.text, len(written.text), wanted=counted(count, "bar"), hint=hint)


def _brought_home(melody: Melody, own: Key, shown: Key, way: str, written: WrittenMelody) -> Melody:
    """A melody that was written in the shown key, in the tune's own key, so that it is shown where it was written.

    Raises InputError where it would leave the MIDI numbers there.
    """
    tonic = tonic_near(own, melody.tonic)
    octaves = (melody.tonic.midi - tonic_near(shown, tonic, way).midi) // 12
    home = melody._replace(tonic=tonic_near(own, tonic, octaves=octaves))
    try:
        home.check_range()
    except ValueError as error:
        what, hint = f"in {own}, the chords' own key, {error}", "write it in a nearer octave; middle C is C4"
        raise InputError(what, written.text, 0, wanted="a nearer octave", hint=hint) from None
    return home


def put_over_chords(session: Session, text: str, way: str) -> Session:
    """A session with a melody over its chords, shown where it was written; ``way`` is the one that goes on to hold.

    Raises InputError.
    """
    tune, shown = session.stand
    new = over_chords(tune, text, shown, session.conventions, way)
    assert new.melody is not None
    lies, would_lie = (tonic_near(shown, new.melody.tonic, each).midi for each in (way, session.way))
    return session.under_another_melody()._replace(tune=new, octaves=0, lift=(lies - would_lie) // 12)


def melody_in(session: Session, key: Key) -> Melody | None:
    """The melody on the stand in a key, where the session takes it; None where the tune has none.

    Raises InputError when a note would lie outside the MIDI numbers.
    """
    tune, _ = session.stand
    if tune.melody is None:
        return None
    try:
        return tune.melody.in_key(key, session.way, session.octaves + session.lift)
    except ValueError as error:
        raise InputError(
            f"in {key}, {error}", wanted="a nearer octave", hint=_way_out(session, tune.melody, key)
        ) from None


def _way_out(session: Session, melody: Melody, key: Key) -> str:
    """How a melody that would leave the MIDI numbers stays inside them."""
    if session.octaves or session.lift:
        return "octave nearest brings the melody back"
    span = melody._replace(tonic=tonic_near(key, melody.tonic, session.way)).span
    is_too_high = span is not None and span[1].midi > HIGHEST
    return f"take the melody there the other way: way {DOWNWARD if is_too_high else UPWARD}"


def melody_views(session: Session, keys: tuple[Key, ...], introduces: bool) -> MelodyAnswer:
    """The melody of a session in some keys. Raises InputError."""
    found = ((key, melody_in(session, key)) for key in keys)
    views = tuple(MelodyView(key, moved) for key, moved in found if moved is not None)
    return MelodyAnswer(session.stand[0], views, session.conventions, care_in(keys), introduces)


def joined(sections: Sequence[tuple[Melody | None, Sequence[Meter]]]) -> Melody | None:
    """The melodies of sections as one, all but the last filled up with rests to the meters of their sections' chords.

    Only the first may have a pickup. None where no section has a melody.
    """
    found = [melody for melody, _ in sections if melody is not None]
    if not found:
        return None
    last = max(place for place, (melody, _) in enumerate(sections) if melody is not None)
    bars: list[MelodyBar] = []
    for place, (melody, meters) in enumerate(sections[: last + 1]):
        own = [] if melody is None else list(melody.bars)
        pickup = [own.pop(0)] if melody is not None and melody.has_pickup else []
        if place < last:
            own = [_filled(bar) for bar in (*own, *(MelodyBar((), meter) for meter in meters[len(own) :]))]
        bars += pickup + own
    return Melody(found[0].tonic, tuple(bars), all(melody.has_octaves for melody in found)).well_counted()


def sounds_at_the_end(melody: Melody | None, meters: Sequence[Meter]) -> Interval | None:
    """What a melody leaves sounding where the bars of its section end; None where it rests, or ends before them."""
    if melody is None or len(melody.bars) - melody.has_pickup < len(meters) or melody.bars[-1].is_short:
        return None
    return melody.notes[-1].interval


def _filled(bar: MelodyBar) -> MelodyBar:
    """A bar with a rest at its end, so that its meter is full."""
    missing = bar.meter.beats - bar.beats
    return bar._replace(notes=(*bar.notes, MelodyNote(None, missing))) if missing else bar
