"""In which keys a tune lies well for a singer, or for several at once, each in the octave that suits the voice.

A key fits where the tune's lowest and highest note lie within every singer's range in some octave. Keys come in order
of ``Fit.rank``: first where the tune lies, for the singer who is worst off; then accidentals; then the way from the
tune's own key (common practice, no source; so is the rule that the mean of the notes by their time lies near the middle
of the comfortable part).
"""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.harmony.moving import best_spelling
from nearhand.melody.instruments import Instrument
from nearhand.melody.places import Place, place_of
from nearhand.melody.ranges import Voice
from nearhand.melody.readings import Reading, accidentals, readings, spelled_for
from nearhand.melody.spans import Span
from nearhand.theory.key import Key
from nearhand.theory.melody import HIGHEST, Melody
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple

_OCTAVE, _FIFTH = 12, 7


class Fit(NamedTuple):
    """A key, and where each singer sings the tune in it.

    ``shift``: semitones from the tune's own key to this one, a fifth at most. ``places``: one for each singer; their
    octaves are counted from the written melody, moved by ``shift``, or where its octave is not known from what most
    singers sing. ``readings``: what the instruments read. ``accidentals``: those of their signatures together, or of
    the key itself where there are no instruments.
    """

    key: Key
    shift: int
    places: tuple[Place, ...]
    readings: tuple[Reading, ...]
    accidentals: int

    @property
    def too_far(self) -> int:
        """Semitones by which the tune passes a singer's range, at the worst; 0 where it fits."""
        return max(place.too_far for place in self.places)

    @property
    def distance(self) -> int:
        """Semitones from the tune's own key by the shorter way."""
        up = self.shift % _OCTAVE
        return min(up, _OCTAVE - up)

    @property
    def room(self) -> tuple[tuple[int, int], ...]:
        """For each singer the semitones of the range that are left below and above."""
        return tuple((place.below, place.above) for place in self.places)

    @property
    def rank(self) -> tuple[int, ...]:
        """What keys are compared by, less being better, and the first difference deciding.

        The rank of the places, each part of it by the singer who is worst off in it (see ``Place.rank``); the
        accidentals; the distance from the tune's own key; of two equal ones the lower key.
        """
        return *_worst(self.places), self.accidentals, self.distance, self.shift


def ranked_keys(
    span: Span,
    singers: Sequence[Voice],
    progression: Progression,
    instruments: Sequence[Instrument] = (),
    melody: Melody | None = None,
) -> tuple[Fit, ...]:
    """All twelve keys, best first, those in which the tune passes a range at the end; each singer in the best octave.

    ``progression`` is the tune's chords, in whose key ``span`` is; it may be empty but for its key. The ``melody``
    has a say in how keys are named. A key in which the tune would leave the MIDI numbers is left out.
    """
    found = []
    for semitones in range(_OCTAVE):
        lows = range((span.low + semitones) % _OCTAVE, HIGHEST - span.width + 1, _OCTAVE)
        if lows:
            places = _places(span, singers, lows)
            found.append(_fit(span, semitones, places, progression, instruments, melody))
    return tuple(sorted(found, key=lambda fit: fit.rank))


def fitting(ranked: Sequence[Fit]) -> tuple[Fit, ...]:
    """Of ranked keys those in which the tune fits all singers; empty where none does.

    >>> from nearhand.melody.ranges import voice_of
    >>> from nearhand.notation.keys import parse_key
    >>> ranked = ranked_keys(Span(60, 74), [voice_of(55, 69)], Progression(parse_key("C"), ()))
    >>> len(ranked), [(str(fit.key), fit.shift) for fit in fitting(ranked)]
    (12, [('G major', -5)])
    """
    return tuple(fit for fit in ranked if not fit.too_far)


def wider_by(span: Span, singers: Sequence[Voice]) -> tuple[int, ...]:
    """For each singer the semitones by which a tune is wider than the range; 0 where it is not."""
    return tuple(max(0, span.width - voice.high + voice.low) for voice in singers)


def _places(span: Span, singers: Sequence[Voice], lows: Sequence[int]) -> tuple[Place, ...]:
    """The best place for each singer; one octave for all of them where that strains none of them more."""
    choices = [[place_of(span, voice, low) for low in lows] for voice in singers]
    best = tuple(min(places, key=lambda place: (place.rank, abs(place.low - span.low))) for places in choices)
    together = [
        places
        for places in zip(*choices, strict=True)
        if all(place.strain <= own.strain for place, own in zip(places, best, strict=True))
    ]
    return min(together, key=lambda places: (_worst(places), abs(places[0].low - span.low)), default=best)


def _worst(places: Sequence[Place]) -> tuple[int, ...]:
    """The rank of places together: each part of it by the one that is worst in it."""
    return tuple(map(max, zip(*(place.rank for place in places), strict=True)))


def _fit(  # noqa: PLR0913, PLR0917  # a key is judged by all of them
    span: Span,
    semitones: int,
    places: tuple[Place, ...],
    progression: Progression,
    instruments: Sequence[Instrument],
    melody: Melody | None,
) -> Fit:
    key = progression.key
    if semitones:
        key = best_spelling(progression, key.moved(_FIFTH * semitones), key, melody)
        key = spelled_for(progression.in_key(key), instruments)
    read = readings(progression.in_key(key), instruments) if instruments else ()
    shift, placed = _counted_in_octaves(span, semitones, places)
    return Fit(key, shift, placed, read, accidentals(key, read))


def _counted_in_octaves(span: Span, semitones: int, places: tuple[Place, ...]) -> tuple[int, tuple[Place, ...]]:
    """The way to a key that leaves fewest octaves to singers, the shorter one of equal ones; and places with theirs."""
    ways = [way for way in (semitones, semitones - _OCTAVE) if abs(way) <= _FIFTH]
    if span.is_free:
        shift = min(ways, key=abs)
        lows = [place.low for place in places]
        written = max(lows, key=lambda low: (lows.count(low), low))
    else:
        shift = min(ways, key=lambda way: (sum(abs(place.low - span.low - way) for place in places), abs(way)))
        written = span.low + shift
    return shift, tuple(place._replace(octaves=(place.low - written) // _OCTAVE) for place in places)
