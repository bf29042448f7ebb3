"""Moving a progression to other keys: which name a key takes, and the walk round the circle of fifths."""

from __future__ import annotations

from nearhand.notation.counting import octaves_in_words
from nearhand.theory.interval import Interval, shortest
from nearhand.theory.key import Key, nearest_spelling, spellings
from nearhand.theory.progression import Progression

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.melody import Melody


def double_accidentals(progression: Progression, key: Key, melody: Melody | None = None) -> int:
    """How many chord tones, and notes of a melody, would need a double accidental in a key."""
    in_chords = sum(abs(tone.alteration) > 1 for chord in progression.in_key(key).chords() for tone in chord.tones)
    if melody is None:
        return in_chords
    intervals = [each for note in melody.notes for each in (note.interval, *note.graces) if each is not None]
    return in_chords + sum(abs(key.tonic.up(interval.fifths).alteration) > 1 for interval in intervals)


def best_spelling(progression: Progression, key: Key, come_from: Key, melody: Melody | None = None) -> Key:
    """The name of a key for this music, chords and melody: that with fewest accidentals in the signature.

    Of six sharps and six flats the one that needs fewer double accidentals in the music is taken, and if both need as
    many, the one on the side one comes from.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> tune = resolve(read_chart("| i | V7 |"), parse_key("A minor"))
    >>> str(best_spelling(tune, parse_key("D# minor"), come_from=parse_key("E minor")))   # D# minor needs C##
    'Eb minor'
    """
    names = spellings(key)
    if len(names) == 1:
        return names[0]
    preferred = nearest_spelling(key, come_from)
    return min(names, key=lambda name: (double_accidentals(progression, name, melody), name != preferred))


def neighbour(progression: Progression, key: Key, falling: bool, melody: Melody | None = None) -> Key:
    """The next key on the circle from ``key``, a fifth down or up."""
    return best_spelling(progression, key.moved(-1 if falling else 1), key, melody)


def all_keys(progression: Progression, falling: bool = True, melody: Melody | None = None) -> tuple[Key, ...]:
    """The twelve keys from the progression's own one by falling (or rising) fifths.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> tune = resolve(read_chart("| i | V7 |"), parse_key("E minor"))
    >>> [str(key.tonic) for key in all_keys(tune)]
    ['E', 'A', 'D', 'G', 'C', 'F', 'Bb', 'Eb', 'G#', 'C#', 'F#', 'B']
    """
    keys = [progression.key]
    for _ in range(11):
        keys.append(neighbour(progression, keys[-1], falling, melody))
    return tuple(keys)


FALLING, RISING, SEMITONES, TONES, RANDOM = "falling", "rising", "semitones", "tones", "random"
ORDERS = (FALLING, RISING, SEMITONES, TONES, RANDOM)
"""Orders of the twelve keys: by falling or rising fifths, by semitones up, by whole tones up (six keys, then the six
between them), or by chance."""
_STEPS = {SEMITONES: tuple(range(12)), TONES: (*range(0, 12, 2), *range(1, 12, 2))}


def keys_in_order(
    progression: Progression, order: str = FALLING, seed: int = 0, melody: Melody | None = None
) -> tuple[Key, ...]:
    """The twelve keys in one of ORDERS, the progression's own first; ``seed`` makes the order by chance the same again.

    >>> from nearhand.notation.keys import parse_key
    >>> tune = Progression(parse_key("C"), ())
    >>> [str(key.tonic) for key in keys_in_order(tune, SEMITONES)]
    ['C', 'Db', 'D', 'Eb', 'E', 'F', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B']
    >>> [str(key.tonic) for key in keys_in_order(tune, TONES)][:7]
    ['C', 'D', 'E', 'Gb', 'Ab', 'Bb', 'Db']
    """
    if order in (FALLING, RISING):
        return all_keys(progression, order == FALLING, melody)
    own = progression.key
    if order == RANDOM:
        from random import Random

        steps = (0, *Random(seed).sample(range(1, 12), 11))
    else:
        steps = _STEPS[order]
    return (own, *(best_spelling(progression, own.moved(7 * step), own, melody) for step in steps[1:]))


def distance_in_words(old: Key, new: Key) -> str:
    """The shortest way from one tonic to another.

    >>> from nearhand.notation.keys import parse_key
    >>> distance_in_words(parse_key("E minor"), parse_key("C minor"))
    'down a major third'
    """
    return way_in_words(shortest(new.tonic.fifths - old.tonic.fifths))


def way_in_words(interval: Interval) -> str:
    """Which way an interval leads, and how far.

    >>> way_in_words(Interval(5, -2)), way_in_words(Interval(-7, 4)), way_in_words(Interval(0, -2))
    ('up a major seventh', 'down a chromatic half step', 'down 2 octaves')
    """
    if interval == Interval(0, 0):
        return "the same pitch"
    if not interval.semitones:
        return "an enharmonic change"
    way = "down" if interval.is_downward else "up"
    if not interval.fifths:
        return f"{way} {octaves_in_words(abs(interval.octaves))}"
    name = "chromatic half step" if not interval.steps and abs(interval.semitones) == 1 else interval.name
    return f"{way} {'an' if name[0] in 'aeiou' else 'a'} {name}"
