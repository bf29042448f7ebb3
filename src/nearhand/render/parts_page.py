"""The parts of a band as a page: a line each for the leader, then what each instrument reads, then friendly keys."""

from __future__ import annotations

from nearhand.harmony.key_reasons import signature_in_words
from nearhand.melody.capo import Capo
from nearhand.melody.compass import compass_of, kind_of_voice
from nearhand.melody.friendly_keys import FriendlyKey
from nearhand.melody.instruments import VOICES, Instrument
from nearhand.notation.chart_writing import write_chart
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.counting import counted, octaves_in_words
from nearhand.notation.keys import key_name, short_key_name
from nearhand.notation.notes import note_name, pitch_name
from nearhand.render import melody_page
from nearhand.render.heads import head
from nearhand.render.page import Line, Page, line, wrapped
from nearhand.theory.interval import Interval
from nearhand.theory.key import Key
from nearhand.theory.mode import Mode
from nearhand.theory.progression import Progression
from nearhand.verbs.answers import MelodyView
from nearhand.verbs.parts import Part, PartsAnswer

_INDENT = 4
MOST_SHARED = 6
LEGEND = "friendly: keys to sound in that have few accidentals or open strings for the player, easiest first"
_MIDDLE = "nearest to the middle of what each instrument usually plays"
_BEST = "where it lies best for each voice"


def draw_parts(answer: PartsAnswer, page: Page) -> list[Line]:
    """A line each for the leader; then each instrument's chart, capos and friendly keys; then the keys for all."""
    conventions, width = answer.conventions, page.width
    lines = head(answer.tune, conventions, page, answer.introduces)
    for part in answer.parts:
        lines += wrapped(reads_in_words(part, answer.key, conventions), width)
    for part in answer.parts:
        lines += [line(), *wrapped(written_in_words(part.instrument), width, role="title")]
        lines += _written(part, conventions, page)
        for sentence in register_in_words(part, conventions):
            lines += wrapped(sentence, width, _INDENT)
        for capo in part.capos:
            lines += wrapped(capo_in_words(capo, conventions), width, _INDENT)
        lines += wrapped(friendly_in_words(part.friendly, answer.key.mode, conventions), width, _INDENT)
    lines.append(line())
    if len(answer.parts) > 1:
        lines += wrapped(shared_in_words(answer), width)
    lines += wrapped(LEGEND, width, role="label")
    if answer.tune.melody is not None:
        lines += wrapped(melody_page.legend_of(conventions, answer.key.mode), width, role="label")
        for sentence in free_octave_in_words(answer):
            lines += wrapped(sentence, width, role="hint")
    return [*lines, *wrapped(answer.advice, width, role="hint")]


def _written(part: Part, conventions: Conventions, page: Page) -> list[Line]:
    """What is read: the chart; with a melody, chords, degrees and notes below one another."""
    key = part.written.key
    if part.melody is None:
        return wrapped(_chart(part.written, conventions), page.width, _INDENT, "chord")
    return melody_page.melody_lines((MelodyView(key, part.melody),), part.written.bars, key, conventions, page)


def reads_in_words(part: Part, key: Key, conventions: Conventions) -> str:
    """The leader's line: where the music sounds, what an instrument reads, and the best capo.

    >>> from nearhand.verbs.parts import part_of, read_instruments
    >>> from nearhand.verbs.tune import tune_from_text
    >>> tune = tune_from_text("Ab: | Ab | Db | Eb7 |")
    >>> for instrument in read_instruments("alto sax, guitar"):
    ...     print(reads_in_words(part_of(tune, instrument), tune.key, Conventions()))
    sounds in A♭, alto sax reads F: one flat
    sounds in A♭, guitar reads A♭: four flats, or G with capo 1
    """
    sounds, reads = (short_key_name(each, conventions) for each in (key, part.written.key))
    text = f"sounds in {sounds}, {part.instrument.name} reads {reads}: {signature_in_words(part.written.key)}"
    if not part.capos or not part.capos[0].fret:
        return text
    best = part.capos[0]
    return f"{text}, or {short_key_name(best.shapes, conventions)} with capo {best.fret}"


def written_in_words(instrument: Instrument) -> str:
    """How far an instrument's notes are written from where they sound.

    >>> from nearhand.melody.instruments import INSTRUMENTS
    >>> for name in ("tenor sax", "piccolo", "flute"):
    ...     print(written_in_words(INSTRUMENTS[name]))
    tenor sax, written an octave and a major second above where it sounds
    piccolo, written an octave below where it sounds
    flute, written as it sounds
    """
    interval = instrument.interval
    if not interval.semitones:
        return f"{instrument.name}, written as it sounds"
    side = "below" if interval.is_downward else "above"
    return f"{instrument.name}, written {_size(-interval if side == 'below' else interval)} {side} where it sounds"


def register_in_words(part: Part, conventions: Conventions) -> list[str]:
    """Where a melody was moved to lie well, and which of its notes are not usually played or sung all the same.

    Where its octave is free there is nothing that it was moved from.

    >>> from nearhand.verbs.melodies import melody_tune
    >>> from nearhand.verbs.parts import part_of, read_instruments
    >>> (sax,) = read_instruments("baritone sax")
    >>> for text in ("Eb4 G Bb Eb5 | C5 - Bb4 -", "Eb5 G3 Bb6 Eb6"):
    ...     for sentence in register_in_words(part_of(melody_tune(text), sax), Conventions()):
    ...         print(sentence)
    The melody sounds an octave lower here, to lie within B♭3 to F♯6 as written.
    The melody sounds 3 octaves lower here, so that most of it lies within B♭3 to F♯6 as written.
    1 note lies below what the baritone sax usually plays, B♭3 to F♯6 as written: E2.
    """
    if part.melody is None:
        return []
    compass = compass_of(part.instrument)
    within = f"{pitch_name(compass.low, conventions)} to {pitch_name(compass.high, conventions)} as written"
    sentences = []
    if part.octaves and part.melody.has_octaves:
        size = _size(Interval(0, abs(part.octaves)))
        aim = "so that most of it lies" if part.outside else "to lie"
        if not part.outside and kind_of_voice(part.instrument) is not None:
            aim = f"where it lies best for a {part.instrument.name},"
        sentences.append(
            f"The melody sounds {size} {'higher' if part.octaves > 0 else 'lower'} here, {aim} within {within}."
        )
    plays = f"the {part.instrument.name} usually {'sings' if part.instrument.family == VOICES else 'plays'}"
    for side in ("below", "above"):
        notes = [pitch for pitch in part.outside if (pitch.midi < compass.low.midi) == (side == "below")]
        if notes:
            counted = "1 note lies" if len(notes) == 1 else f"{len(notes)} notes lie"
            names = ", ".join(pitch_name(pitch, conventions) for pitch in notes)
            sentences.append(f"{counted} {side} what {plays}, {within}: {names}.")
    return sentences


def free_octave_in_words(answer: PartsAnswer) -> tuple[str, ...]:
    """Where a melody stands that was given without octaves; nothing where it has them, or where there is none.

    >>> from nearhand.verbs.respond import respond
    >>> from nearhand.verbs.session import Session
    >>> free_octave_in_words(respond(Session(), "parts --melody 'C: 1 2 3' --for 'tenor voice'").answer)
    ('The melody was given without octaves: it stands where it lies best for each voice.',)
    """
    melody = answer.tune.melody
    if melody is None or melody.has_octaves:
        return ()
    are_voices = [kind_of_voice(part.instrument) is not None for part in answer.parts]
    places = [*([] if all(are_voices) else [_MIDDLE]), *([_BEST] if any(are_voices) else [])]
    return (f"The melody was given without octaves: it stands {', and '.join(places)}.",)


def _size(interval: Interval) -> str:
    """An interval upward, its octaves first."""
    octaves, steps = divmod(interval.steps, 7)
    parts = [octaves_in_words(octaves)] if octaves else []
    parts += [f"a {(interval + Interval(0, -octaves)).name}"] if steps else []
    return " and ".join(parts)


def capo_in_words(capo: Capo, conventions: Conventions) -> str:
    """A capo, the shapes that are played, and how many of the chords, where there are any, lie open.

    >>> from nearhand.melody.capo import capos
    >>> from nearhand.verbs.tune import tune_from_text
    >>> capo_in_words(capos(tune_from_text("Eb: | Eb | Ab | Bb |").progression)[0], Conventions())
    'capo 1, shapes of D major: 3 of 3 chords lie open, D G A'
    """
    names = " ".join(write_chord(chord, conventions) for chord in capo.chords)
    where = f"{f'capo {capo.fret}' if capo.fret else 'no capo'}, shapes of {key_name(capo.shapes, conventions)}"
    if not capo.chords:
        return where
    lie = "lies" if capo.open_chords == 1 else "lie"
    return f"{where}: {capo.open_chords} of {counted(len(capo.chords), 'chord')} {lie} open, {names}"


def friendly_in_words(friendly: tuple[FriendlyKey, ...], mode: Mode, conventions: Conventions) -> str:
    """The keys that lie well for an instrument by their tonics, those that need a capo behind their frets.

    >>> from nearhand.notation.keys import parse_key
    >>> keys = [FriendlyKey(parse_key(text), fret) for text, fret in (("C", 0), ("D", 0), ("Eb", 1), ("F", 1))]
    >>> friendly_in_words(tuple(keys), keys[0].key.mode, Conventions())
    'friendly in major: C, D; with capo 1: E♭, F'
    """
    groups: dict[int, list[str]] = {}
    for each in friendly:
        groups.setdefault(each.fret, []).append(note_name(each.key.tonic, conventions))
    parts = [f"with capo {fret}: {', '.join(names)}" if fret else ", ".join(names) for fret, names in groups.items()]
    return f"friendly in {mode.name}: {'; '.join(parts)}"


def shared_in_words(answer: PartsAnswer) -> str:
    """The keys that are friendly to all, nearest first; where there is none, those that leave out the fewest."""
    hard = bool(answer.shared[0].hard_for)
    mode = answer.key.mode.name
    opening = f"No {mode} key is friendly to all; to most" if hard else f"Friendly to all in {mode}, nearest first"
    names = []
    for shared in answer.shared[:MOST_SHARED]:
        facts = [f"capo {shared.fret}"] if shared.fret else []
        facts += [f"not {' or '.join(instrument.name for instrument in shared.hard_for)}"] if hard else []
        name = note_name(shared.key.tonic, answer.conventions)
        names.append(f"{name} ({', '.join(facts)})" if facts else name)
    return f"{opening}: {', '.join(names)}."


def _chart(progression: Progression, conventions: Conventions) -> str:
    return write_chart(progression, lambda relative: write_chord(relative.in_key(progression.key), conventions))
