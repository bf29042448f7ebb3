"""Which church modes the notes of a melody fit, and what a mode gains on the major or minor key of its tonic.

Dorian and phrygian have a minor third, mixolydian and lydian a major one; each differs from minor or major by one
degree (Open Music Theory, "Diatonic Modes"). A mode fits where every note belongs to its scale, and that degree sounds
in the mode's form: then it never does in the other. Where it only decorates others (G F♯ G), it tells nothing. No
profiles here cover these modes, so a mode has the score of the key of its third, and more where the melody closes on
the tonic: there it has not lost what a key does that a short tune leaves. The key itself loses. How much is ours
(common practice, no source); it was set on the same half of some folk tunes as the other weights (docs/harmony.md).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence, Set

from nearhand.harmony.key_finding import KeyFit
from nearhand.harmony.melody_evidence import Heard, in_earnest, tonics_holding
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.keys import key_name
from nearhand.notation.notes import note_name
from nearhand.theory.key import Key
from nearhand.theory.mode import MODES, Mode
from nearhand.theory.pitch_class import PitchClass, pitch_class
from nearhand.theory.record import NamedTuple


class ChurchMode(NamedTuple):
    """A mode, the degree by which it differs from minor or major, in words and as a number, and what a close gains."""

    mode: Mode
    telling: str
    degree: int
    gain: float


CHURCH_MODES = (
    ChurchMode(MODES["dorian"], "raised sixth", 6, 0.2),
    ChurchMode(MODES["mixolydian"], "lowered seventh", 7, 0.0),
    ChurchMode(MODES["phrygian"], "lowered second", 2, -0.2),
    ChurchMode(MODES["lydian"], "raised fourth", 4, -0.1),
)
"""Dorian gains most: it has no leading tone, and minor, whose score it has, loses where that is missing.
Lydian and phrygian are rare."""
_CONTRADICTED = 0.25
"""What major or minor loses where one of its degrees sounds in the form of a mode alone."""
_NEAR = 3.0
"""How many times likelier the first key may be than a mode that is named beside it."""
_WIDEST_SIGNATURE, _NOTES_OF_A_SCALE, _ENOUGH_KINDS = 7, 7, 5


def modes_heard(notes: Sequence[PitchClass]) -> dict[Key, ChurchMode]:
    """The keys in church modes that hold every note, and whose tonic, third and telling degree sound.

    A scale is seven neighbouring places on the line of fifths with the telling degree at one end, so that there is one
    key at most for each mode. Empty with fewer than five different notes. Raises ValueError without notes.

    >>> from nearhand.notation.notes import parse_pitch_class
    >>> heard = modes_heard([parse_pitch_class(name) for name in "E F# G A B C# D".split()])
    >>> [str(key) for key in heard]
    ['E dorian', 'A mixolydian', 'F# phrygian', 'G lydian']
    """
    melody = [note.fifths for note in notes]
    return modes_at(set(melody), in_earnest(melody))


def modes_at(places: Set[int], earnest: Set[int]) -> dict[Key, ChurchMode]:
    """``modes_heard`` by the places that sound, and those of them that do in earnest."""
    lowest, highest = min(places), max(places)
    if highest - lowest >= _NOTES_OF_A_SCALE or len(places) < _ENOUGH_KINDS:
        return {}
    found = {}
    for church in CHURCH_MODES:
        telling = church.mode.degrees[church.degree - 1]
        tonic = (highest if telling == max(church.mode.degrees) else lowest) - telling
        key = Key(pitch_class(tonic), church.mode)
        sounds = {tonic, tonic + church.mode.degrees[2]} <= places and tonic + telling in earnest
        if sounds and abs(key.signature) <= _WIDEST_SIGNATURE:
            found[key] = church
    return found


def with_modes(
    scores: Mapping[Key, float], modes: Mapping[Key, ChurchMode], last: PitchClass, heard: Heard
) -> dict[Key, float]:
    """Scores of keys with those of the modes that were heard, from the major or minor keys of their tonics.

    ``last``: the last note of the melody; ``heard``: what it tells.
    """
    found = dict(scores)
    for key, church in modes.items():
        plain = plain_key(key)
        if plain in scores:
            found[key] = scores[plain]
            if key.tonic == last:
                is_left = key.tonic.fifths not in tonics_holding(heard.earnest, plain.mode)
                found[key] += heard.told * church.gain + heard.left * is_left
            found[plain] -= heard.told * _CONTRADICTED
    return found


def plain_key(key: Key) -> Key:
    """The major or minor key on the tonic of a church mode, with its third.

    >>> from nearhand.notation.keys import parse_key
    >>> str(plain_key(parse_key("E dorian"))), str(plain_key(parse_key("F lydian")))
    ('E minor', 'F major')
    """
    return Key(key.tonic, MODES["minor" if key.mode.has_minor_third else "major"])


def mode_in_words(fits: Sequence[KeyFit], melody: Sequence[PitchClass], conventions: Conventions = DEFAULT) -> str:
    """Why the likeliest key is in a church mode, or which one comes near it; empty where the melody says nothing of it.

    ``fits``: keys with their shares, the likeliest first.

    >>> from nearhand.harmony.melody_keys import rank_keys_of_melody
    >>> from nearhand.notation.notes import parse_pitch_class
    >>> notes = [parse_pitch_class(name) for name in "GBDFEDBAG"]
    >>> mode_in_words(rank_keys_of_melody(notes), notes)
    'G mixolydian rather than G major: every note fits, F is its lowered seventh, no F♯ sounds, it ends on G.'
    """
    modes = modes_heard(melody) if melody else {}
    near = (fit.key for fit in fits if fit.key in modes and fit.share * _NEAR > fits[0].share)
    key = next(near, None)
    if key is None:
        return ""
    number, plain = modes[key].degree, plain_key(key)
    own, other = (note_name(each.degree(number), conventions) for each in (key, plain))
    name, plain_name = (key_name(each, conventions) for each in (key, plain))
    end = f", it ends on {note_name(key.tonic, conventions)}" if melody[-1] == key.tonic else ""
    why = f"every note fits, {own} is its {modes[key].telling}, no {other} sounds{end}"
    return f"{name} rather than {plain_name}: {why}." if key == fits[0].key else f"It may be {name}: {why}."
