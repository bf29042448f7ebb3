"""The library's public names: read a key and a progression, move it, voice it, explain it."""

from __future__ import annotations

from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.theory.key import Key
from nearhand.verbs.tune import Tune, tune_from_text
from nearhand.voicing.voice import VoicedProgression, voice_progression, voiced_path
from nearhand.voicing.wishes import DEFAULT_WISHES, MELODY_TOP, Wishes

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Iterable

    from nearhand.harmony.borrowing import LendingMode
    from nearhand.harmony.cadences import Cadence
    from nearhand.harmony.key_finding import KeyFit
    from nearhand.harmony.modulation import Region
    from nearhand.melody.against import Tone
    from nearhand.melody.difficulty import Difficulty
    from nearhand.melody.singers_key import Fit
    from nearhand.verbs.instead import Offer
    from nearhand.voicing.lines import Lines
    from nearhand.voicing.on_top import Tops

__all__ = [
    "Conventions",
    "InputError",
    "Key",
    "Tune",
    "VoicedProgression",
    "Wishes",
    "best_paths",
    "borrow",
    "cadences",
    "degrees",
    "difficulty",
    "explain",
    "find_keys",
    "instead",
    "lines",
    "next_best",
    "parse_key",
    "parse_melody",
    "parse_progression",
    "regions",
    "singers_keys",
    "tones",
    "voice",
    "with_melody",
    "written_for",
]


def parse_progression(text: str, key: Key | None = None, conventions: Conventions = DEFAULT) -> Tune:
    """Read a chart as a tune. Without ``key`` it is inferred from the chord symbols, and ``key_source`` says so.

    Raises InputError (a ValueError) with the place of the first character that cannot be read.

    >>> parse_progression("| Dm7 | G7 | Cmaj7 |").numbers()
    ('2-7', '57', '1maj7')
    """
    return tune_from_text(text, key, conventions)


def parse_melody(text: str, key: Key | None = None, conventions: Conventions = DEFAULT) -> Tune:
    """Read a melody as a tune without chords. Without a key in front or in ``key`` it is inferred from names of notes.

    ``tune.melody.sounding()`` are its notes in time order: spelled pitch, bar, onset and length in beats. Raises
    InputError; also for degrees where no key is known.

    >>> tune = parse_melody("G: 5_ | 1 2 [3 4] 5 | 6 b7 6 5")
    >>> [str(note.pitch) for note in tune.in_key(parse_key("F")).melody.sounding()][:5]
    ['C3', 'F3', 'G3', 'A3', 'Bb3']
    """
    from nearhand.verbs.melodies import melody_tune

    return melody_tune(text, key, conventions)


def with_melody(tune: Tune, text: str, conventions: Conventions = DEFAULT) -> Tune:
    """A tune with a melody over its chords, written in its key.

    Raises InputError; also for a melody that is longer than the chords.

    >>> with_melody(parse_progression("| C | G7 |"), "1 3 5 - | 4 2 7_ -").melody.bars[1].beats
    4
    """
    from nearhand.verbs.melodies import over_chords

    return over_chords(tune, text, conventions=conventions)


def degrees(tune: Tune, conventions: Conventions = DEFAULT) -> tuple[str, ...]:
    """The degrees of a tune's melody, one a sounding note, as numbers or, where ``sing`` says so, as syllables.

    Raises ValueError for a tune without melody.

    >>> degrees(parse_melody("E minor: B3 E4 F#4 G4 D#4"))
    ('5_', '1', '2', '3', '♯7_')
    """
    from nearhand.notation.melody_writing import write_as_degrees

    if tune.melody is None:
        raise ValueError("this tune has no melody")
    write = write_as_degrees(tune.key.mode, conventions)
    return tuple(write(note.interval) for note in tune.melody.sounding())


def voice(
    tune: Tune, style: Wishes | str = DEFAULT_WISHES, loop: bool = False, home: Key | None = None
) -> VoicedProgression:
    """Voice a tune on the path that costs least; ``pitches`` of the result are per chord, low to high.

    ``style``: a family's name, or all that is asked as Wishes. ``home``: the key in which pinned notes and a given top
    line sound, where it is not the tune's own. ``Wishes(top="melody")`` puts the tune's melody on top, as far as its
    chords have it there: ``search.on_top`` of the result tells. Raises ValueError for a family that does not exist,
    InputError for wishes that cannot be met.

    >>> tune = parse_progression("| C | F | C |")
    >>> voice(tune).movement, voice(tune, "drop2").costs.movement
    (6, 6)
    >>> [str(pitches[-1]) for pitches in voice(tune, Wishes("four-part", top="falling")).pitches]
    ['C5', 'C5', 'C5']
    """
    wishes = Wishes(style) if isinstance(style, str) else style
    return voice_progression(tune.progression, wishes, loop, home, _tops(tune, wishes))


def best_paths(
    tune: Tune, count: int, style: Wishes | str = DEFAULT_WISHES, loop: bool = False
) -> tuple[VoicedProgression, ...]:
    """The ``count`` best paths, best first, no two alike; fewer where there are no more.

    Raises ValueError for a family that does not exist or a count below 1, InputError for wishes that cannot be met.

    >>> [voiced.movement for voiced in best_paths(parse_progression("| C | F | C |"), 3)]
    [6, 6, 6]
    """
    from nearhand.voicing.others import other_paths
    from nearhand.voicing.searches import search_for
    from nearhand.voicing.task import Task

    if count < 1:
        raise ValueError(f"count must be 1 or more (got {count})")
    wishes = Wishes(style) if isinstance(style, str) else style
    task = Task(tune.progression, wishes._replace(path=1), loop, tune.key, tops=_tops(tune, wishes))
    search = search_for(task)
    return tuple(voiced_path(search, path) for _, path in other_paths(search, count))


def _tops(tune: Tune, wishes: Wishes) -> Tops | None:
    """The notes of a tune's melody that may lie on top, where they are wished for."""
    if wishes.top != MELODY_TOP or tune.melody is None:
        return None
    from nearhand.melody.top_notes import top_notes

    return top_notes(tune.melody, tune.progression)


def next_best(voiced: VoicedProgression, number: int, count: int = 2) -> tuple[VoicedProgression, ...]:
    """The best paths that voice chord ``number`` (from 1, rests left out) in another way, best first.

    Raises IndexError when there is no such chord.

    >>> voiced = voice(parse_progression("| C | F | C |"))
    >>> [[str(pitch) for pitch in other.voicings[1].right] for other in next_best(voiced, 2)]
    [['F4', 'A4', 'C5'], ['A3', 'C4', 'F4']]
    """
    from nearhand.voicing.alternatives import alternatives

    if not 1 <= number <= len(voiced.voicings):
        raise IndexError(f"the chords are numbered 1 to {len(voiced.voicings)} (got {number})")
    taken = voiced.voicings[number - 1].candidate
    others = alternatives(voiced.search, number - 1, taken, count)
    return tuple(voiced_path(voiced.search, other) for other in others)


def lines(voiced: VoicedProgression) -> Lines:
    """Each voice by itself, highest first, and how bass and top voice move against each other.

    >>> [voice.name for voice in lines(voice(parse_progression("| C | F | C |"), "four-part")).voices]
    ['soprano', 'alto', 'tenor', 'bass']
    """
    from nearhand.voicing.lines import lines_of

    return lines_of(voiced)


def explain(tune: Tune, conventions: Conventions = DEFAULT) -> tuple[tuple[str, ...], ...]:
    """For each chord, rests left out, plain sentences: where it comes from, what it does, where its tones go.

    >>> explain(parse_progression("| C | Fm | C |"))[1][0]
    'It is borrowed from natural minor on the same tonic: A♭ is ♭6. Harmonic minor and phrygian hold it too.'
    """
    from nearhand.harmony.words import sentences, where_tones_go

    rows = [
        (*sentences(analysis, tune.key, conventions), where_tones_go(analysis, tune.key, conventions))
        for analysis in tune.analyses()
    ]
    return tuple(tuple(sentence for sentence in row if sentence) for row in rows)


def cadences(tune: Tune, voiced: VoicedProgression | None = None) -> tuple[Cadence, ...]:
    """The cadences of a tune, in order; with its voicing the top note tells perfect ones from imperfect ones.

    >>> [(cadence.kind, cadence.bar) for cadence in cadences(parse_progression("| C | F | G7 | C |"))]
    [('authentic', 4)]
    """
    from nearhand.harmony.cadences import cadences as find_cadences

    top_notes = None if voiced is None else [pitches[-1].midi for pitches in voiced.pitches]
    return find_cadences(tune.progression, top_notes)


def tones(tune: Tune) -> tuple[Tone, ...]:
    """What every note of a tune's melody is over its chords, in order: ``kind``, and ``tone``, which member or tension.

    Raises InputError for a tune without melody.

    >>> tune = with_melody(parse_progression("| C | G7 | C |"), "E4 F E C | B3 A3 B3 D | C - - -")
    >>> [(str(each.note.pitch), each.kind, each.tone) for each in tones(tune)][:2]
    [('E4', 'chord tone', 'third'), ('F4', 'upper neighbour', '')]
    """
    from nearhand.melody.against import against

    if tune.melody is None:
        what, hint = "this tune has no melody", 'put one over its chords: with_melody(tune, "E4 F#4 G4")'
        raise InputError(what, wanted="a melody", hint=hint)
    return against(tune.melody, tune.progression)


def find_keys(tune: Tune | None = None, melody: str = "", profile: str = "albrecht-shanahan") -> tuple[KeyFit, ...]:
    """The keys that a tune's chords, a melody, or both may be in, the likeliest first.

    ``melody``: note names with lengths as ``parse_melody`` reads them; without it the tune's own. ``profile``: what a
    melody is compared with, one of ``nearhand.harmony.key_profiles.PROFILES``. Raises InputError for a melody that
    cannot be read, ValueError for an unknown profile, and when there is neither chord nor note.

    >>> str(find_keys(melody="E F# G A B D# E")[0].key)
    'E minor'
    """
    from nearhand.harmony.key_profiles import PROFILES
    from nearhand.verbs.keys import fits_of, heard, melody_in_names

    if profile not in PROFILES:
        raise ValueError(f"profile must be one of {', '.join(PROFILES)} (got {profile!r})")
    progression = None if tune is None else tune.progression
    own = None if tune is None else tune.melody
    meters = [] if progression is None else [bar.meter for bar in progression.bars]
    return fits_of(progression, *heard(melody_in_names(melody, meters) if melody else own), profile)


def regions(tune: Tune) -> tuple[Region, ...]:
    """Where a tune's key turns: its stretches in one key each, in order, with their pivot chords.

    >>> [str(region.key) for region in regions(parse_progression("C Am F G C Am D7 G Am7 D7 G G"))]
    ['C major', 'G major']
    """
    from nearhand.harmony.modulation import regions_of

    return regions_of(tune.progression)


def borrow(key: Key) -> tuple[LendingMode, ...]:
    """The chords that each parallel mode lends to a key, the likeliest mode first; their places are above the tonic.

    >>> [mode.name for mode in borrow(parse_key("C"))][:2]
    ['natural minor', 'harmonic minor']
    """
    from nearhand.harmony.borrowing import borrowed_palette

    return borrowed_palette(key.mode)


def instead(tune: Tune, number: int) -> tuple[Offer, ...]:
    """What else fits in place of chord ``number`` (from 1, rests left out), nearest first.

    Raises IndexError when there is no such chord.

    >>> len(instead(parse_progression("| Dm7 | G7 | Cmaj7 |"), 2)) > 3
    True
    """
    from nearhand.verbs.instead import offers_for

    chords = tune.progression.relative_chords
    if not 1 <= number <= len(chords):
        raise IndexError(f"the chords are numbered 1 to {len(chords)} (got {number})")
    return offers_for(chords, number - 1, tune.key)


def _tune_in_html(tune: Tune) -> str:
    """A tune as a table for notebooks."""
    from nearhand.render.html_tables import tune_table

    return tune_table(tune)


def _voiced_in_html(voiced: VoicedProgression) -> str:
    """Voicings as a table for notebooks."""
    from nearhand.render.html_tables import voiced_table

    return voiced_table(voiced)


_IN_NOTEBOOKS = "_repr_html_"
"""The method by which notebooks ask a value for its table. Values know nothing of pages: theirs is given them here."""
setattr(Tune, _IN_NOTEBOOKS, _tune_in_html)
setattr(VoicedProgression, _IN_NOTEBOOKS, _voiced_in_html)


def singers_keys(tune: Tune, span: str = "", singers: str = "", instruments: str = "") -> tuple[Fit, ...]:
    """The keys in which a tune fits singers, best first, each with ``key``, ``shift`` in semitones, and ``places``.

    ``span``: its lowest and highest note in its own key (``C4 E5``), or as degrees (``5 3``); without it the tune's
    melody tells these, and the time at each note. ``singers``: ranges (``A3 D5``, or ``A3 D5 C4 A4`` with the
    comfortable part) or kinds of voices (``alto``), separated by semicolons. ``instruments``: those whose accidentals
    count, with commas between. Raises InputError; also for a tune without melody where there is no span.

    >>> tune = parse_progression("| C | F | G7 | C |")
    >>> [(str(fit.key), fit.shift) for fit in singers_keys(tune, "C4 D5", "A3 C5")]
    [('Bb major', -2), ('A major', -3)]
    """
    from nearhand.melody.singers_key import fitting, ranked_keys
    from nearhand.verbs.parts import read_instruments
    from nearhand.verbs.singer import sung_melody
    from nearhand.verbs.singer_reading import read_singers, read_span

    whole = read_span(span, tune.key) if span else sung_melody(tune).span
    band = read_instruments(instruments) if instruments else ()
    return fitting(ranked_keys(whole, read_singers(singers), tune.progression, band, tune.melody))


def written_for(tune: Tune, instrument: str) -> Tune:
    """A tune as an instrument reads it: chords and melody in its written key, as the verb ``parts`` shows them.

    The melody is moved by whole octaves where it would lie outside what the instrument usually plays; one without
    octaves goes to the middle of that. Raises InputError for a name that is not that of one instrument, or where a
    note of the melody would be written outside the MIDI numbers in every octave.

    >>> written_for(parse_progression("| Eb | Ab | Bb7 |"), "alto sax").symbols()
    ('C', 'F', 'G7')
    """
    from nearhand.verbs.parts import part_of, read_instruments

    known, *others = read_instruments(instrument)
    if others:
        start = instrument.index(",")
        raise InputError("one instrument is wanted here", instrument, start, wanted="one instrument")
    part = part_of(tune, known)
    return tune._replace(progression=part.written, melody=part.melody)


def difficulty(tune: Tune, keys: Iterable[Key] = (), known: Iterable[Key] = (), choose: int = 3) -> Difficulty:
    """What is hard about a tune in each of some ``keys``, and the few keys that teach most.

    ``keys``: all twelve by falling fifths where none are given. ``known``: those whose chords the hand has; the tune's
    own where none are given. ``choose``: how many to choose at most. A melody without chords is learned by its steps
    from note to note, as they lie on black and white keys. Raises ValueError for a key of another mode or a
    number below 1.

    >>> found = difficulty(parse_progression("| Dm7 | G7 | Cmaj7 |"), choose=2)
    >>> [(str(row.key.tonic), row.accidentals, row.black, len(row.new)) for row in found.keys][:3]
    [('C', 0, 0, 0), ('F', 1, 2, 3), ('Bb', 2, 4, 3)]
    >>> [str(each.key) for each in found.to_learn]
    ['F major', 'G major']
    """
    from nearhand.harmony.moving import all_keys
    from nearhand.melody.difficulty import difficulty_of

    asked, learned = tuple(keys) or all_keys(tune.progression, melody=tune.melody), tuple(known) or (tune.key,)
    for key in (*asked, *learned):
        tune.in_key(key)
    if choose < 1:
        raise ValueError(f"choose must be 1 or more (got {choose})")
    return difficulty_of(tune.progression, tune.melody, asked, learned, choose)
