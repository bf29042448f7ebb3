"""Relative major or minor: the two keys of one signature held against each other by what a melody does, in a sentence.

What is weighed is common practice, no source: the last and the first note, the raised seventh of minor, and the time on
each tonic and its fifth.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from nearhand.harmony.key_finding import KeyFit
from nearhand.harmony.melody_evidence import weighed
from nearhand.harmony.percents import percent
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.keys import key_name
from nearhand.notation.notes import note_name
from nearhand.theory.key import Key
from nearhand.theory.mode import DOMINANT, LEADING_TONE, MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

_PLAIN = 3.0
"""How many times likelier than its relative a key must be to be told from it."""
_Fact = tuple[Key, str]


def relative_in_words(
    best: KeyFit,
    relative: KeyFit,
    melody: Sequence[PitchClass],
    lengths: Sequence[Beats] | None = None,
    conventions: Conventions = DEFAULT,
) -> str:
    """Why the likeliest key rather than its relative, by what a melody does; or that it is hard to tell.

    Empty without a melody, and where the likeliest key is neither major nor minor. Raises ValueError for a length that
    is not above 0.

    >>> from nearhand.harmony.melody_keys import rank_keys_of_melody
    >>> notes = [PitchClass(place) for place in (0, -1, 1, 3, 0, 3, 1, -1, -1)]   # C F G A C A G F F
    >>> fits = rank_keys_of_melody(notes)
    >>> relative_in_words(fits[0], relative_of(fits), notes)
    'F major rather than D minor: it ends on F, no C♯ sounds, F and C are 56 percent of the notes, D and A 22 percent.'
    """
    if not melody or best.key.mode not in (MAJOR, MINOR):
        return ""
    names = [key_name(fit.key, conventions) for fit in (best, relative)]
    facts = _facts(best.key, melody, lengths, conventions)
    pros, cons = (", ".join(fact for side, fact in facts if side == fit.key) for fit in (best, relative))
    if relative.share * _PLAIN > best.share:
        sides = "; ".join(f"for {name}, {side}" for name, side in zip(names, (pros, cons), strict=True) if side)
        return f"It is hard to tell {names[0]} from {names[1]}: {sides}."
    if not pros:
        return f"The melody alone speaks rather for {names[1]}: {cons}."
    return f"{names[0]} rather than {names[1]}: {pros}{f'; but {cons}' if cons else ''}."


def relative_of(fits: Sequence[KeyFit]) -> KeyFit:
    """The relative of the likeliest of some keys, with its share: 0 where it is not among them.

    ``fits``: keys with their shares, the likeliest first.
    """
    relative = fits[0].key.relative
    return next((fit for fit in fits if fit.key == relative), KeyFit(relative, 0.0, 0.0))


def _facts(
    key: Key, melody: Sequence[PitchClass], lengths: Sequence[Beats] | None, conventions: Conventions
) -> list[_Fact]:
    """What a melody does, each with the key, of two relatives, for which it speaks."""
    pair = (key, key.relative)
    minor = next(each for each in pair if each.mode == MINOR)
    facts = [(each, ends) for each in pair if (ends := _ends(each, melody, conventions))]
    leading = minor.tonic.up(LEADING_TONE)
    name = note_name(leading, conventions)
    if leading in melody:
        facts.append((minor, f"{note_name(minor.tonic, conventions)}'s leading tone {name} sounds"))
    else:
        facts.append((minor.relative, f"no {name} sounds"))
    return [*facts, *_time(pair, melody, lengths, conventions)]


def _ends(key: Key, melody: Sequence[PitchClass], conventions: Conventions) -> str:
    words = [word for word, note in (("begins", melody[0]), ("ends", melody[-1])) if note == key.tonic]
    return f"it {' and '.join(words)} on {note_name(key.tonic, conventions)}" if words else ""


def _time(
    pair: tuple[Key, Key], melody: Sequence[PitchClass], lengths: Sequence[Beats] | None, conventions: Conventions
) -> Iterable[_Fact]:
    """Which of two keys has more time on its tonic and its fifth, and how much; nothing where they are equal."""
    weights = weighed(melody, lengths)
    homes = [(each, (each.tonic, each.tonic.up(DOMINANT))) for each in pair]
    whole = sum(weights.values())
    percents = [percent(sum(weights.get(note, 0) for note in notes), whole) for _, notes in homes]
    if percents[0] == percents[1]:
        return []
    more, less = (0, 1) if percents[0] > percents[1] else (1, 0)
    names = [" and ".join(note_name(note, conventions) for note in notes) for _, notes in homes]
    verb, of = ("are", "of the notes") if lengths is None else ("take", "of the time")
    told = f"{names[more]} {verb} {percents[more]} percent {of}, {names[less]} {percents[less]} percent"
    return [(homes[more][0], told)]
