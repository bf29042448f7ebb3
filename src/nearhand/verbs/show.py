"""``show``: the progression in its own key, in a few, or in all twelve."""

from __future__ import annotations

from nearhand.harmony.moving import ORDERS, RANDOM, keys_in_order
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.theory.key import Key
from nearhand.verbs.answers import View, ViewsAnswer, view_in
from nearhand.verbs.care import CARE_WITH_STRETCHES, care_in
from nearhand.verbs.loading import loaded
from nearhand.verbs.melody_on_top import tops_in
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.verb import Arguments
from nearhand.voicing.hands import SPAN

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.verbs.answers import MelodyAnswer
    from nearhand.verbs.tune import Tune

ALL = "all"
_MOST_DIGITS = 9


def show(session: Session, arguments: Arguments) -> Outcome:
    """Show the tune in the shown key, or in the keys of ``--to``.

    Raises InputError.
    """
    session = loaded(session, arguments)
    text = arguments.option("to")
    if text is None:
        return shown(session, introduces=bool(arguments.words) or session.stand[0].key == session.stand[1])
    try:
        text, note = seeded(text)
        keys = read_keys(text, session)
    except InputError as error:
        raise arguments.placed(error, "to") from None
    return Outcome(session, noted(views(session, keys), note))


def read_keys(text: str, session: Session) -> tuple[Key, ...]:
    """Read one key, several between commas, or ``all`` for the twelve: by falling fifths, or in the order that follows.

    A bare note keeps the mode of the tune: ``C`` is C minor for a tune in minor, ``C major`` says otherwise.
    Without a number, the order by chance is number 0. Raises InputError.
    """
    tune, _ = session.stand
    words = text.lower().split()
    if words and words[0] == ALL:
        return _all_keys(words[1:], text, tune)
    keys, start = [], 0
    for part in text.split(","):
        try:
            if part.split()[:1] == [ALL]:
                hint = "write all, or the keys with commas between"
                raise InputError("all stands alone", part, wanted="a key", hint=hint)
            keys.append(read_target(part, tune.key))
        except InputError as error:
            raise error.within(text, start) from None
        start += len(part) + 1
    return tuple(keys)


def seeded(text: str) -> tuple[str, str]:
    """A text for ``read_keys`` whose order by chance has a number, and the sentence that tells it; empty for others.

    >>> seeded("all")
    ('all', '')
    """
    if text.lower().split() != [ALL, RANDOM]:
        return text, ""
    from random import randrange

    seed = randrange(1000)
    return f"{text} {seed}", f"This order by chance has the number {seed}: all random {seed} gives it again."


def _all_keys(words: list[str], text: str, tune: Tune) -> tuple[Key, ...]:
    """The twelve keys in the order that some words tell. Raises InputError."""
    if not words:
        return keys_in_order(tune.progression, melody=tune.melody)
    order, *rest = words
    seed = rest[0] if order == RANDOM and rest else ""
    has_seed = seed.isascii() and seed.isdigit() and len(seed) <= _MOST_DIGITS
    if order not in ORDERS or len(rest) != bool(seed) or (seed and not has_seed):
        wrong = rest[-1] if order in ORDERS and rest else order
        start = text.lower().rfind(wrong)
        what, hint = (
            f"{wrong[:20]!r} is no order of keys",
            f"write one of {', '.join(f'all {name}' for name in ORDERS)}",
        )
        raise InputError(what, text, start, start + len(wrong), wanted="an order of keys", hint=hint)
    return keys_in_order(tune.progression, order, int(seed or 0), tune.melody)


def read_target(text: str, own: Key) -> Key:
    """Read the key to move to; its mode must be as major or as minor as the tune's.

    Raises InputError.

    >>> str(read_target("G minor", parse_key("E minor"))), str(read_target("C", parse_key("E minor")))
    ('G minor', 'C minor')
    """
    key = parse_key(text)
    bare = text.strip()[1:].strip("#b♯♭") == ""
    if bare:
        return Key(key.tonic, own.mode)
    if key.mode.degrees != own.mode.degrees:
        raise InputError(
            f"the tune is in {own}, so it cannot move to {key}",
            text,
            len(text) - len(text.lstrip()),
            wanted=f"a key in {own.mode.name}",
            hint=f"write {key.tonic} {own.mode.name}",
        )
    return Key(key.tonic, own.mode)


def shown(session: Session, introduces: bool = False) -> Outcome:
    """A session with its tune in the key it is shown in; ``introduces`` when the tune is new to the player.

    Raises InputError when there is no tune.
    """
    return Outcome(session, views(session, (session.stand[1],), introduces))


def views(session: Session, keys: tuple[Key, ...], introduces: bool = True) -> ViewsAnswer | MelodyAnswer:
    """The tune of a session in some keys; of a melody alone, its numbers over the notes in each key."""
    tune, _ = session.stand
    if tune.melody is not None and not tune.progression.bars:
        from nearhand.verbs.melodies import melody_views  # most tunes have chords

        return melody_views(session, keys, introduces)
    seen = tuple(_seen(session, key, len(keys) > 1) for key in keys)
    advice = care_in(keys) or (CARE_WITH_STRETCHES if any(map(_stretches, seen)) else "")
    return ViewsAnswer(tune, seen, session.conventions, advice, introduces)


def noted(answer: ViewsAnswer | MelodyAnswer, note: str) -> ViewsAnswer | MelodyAnswer:
    """An answer with a sentence before its advice."""
    return answer._replace(advice=f"{note} {answer.advice}".strip()) if note else answer


def _seen(session: Session, key: Key, is_one_of_several: bool) -> View:
    """The tune in a key; where that is one of several, a refusal names it."""
    tune, _ = session.stand
    try:
        view = view_in(tune.progression, key, session.wishes, session.loops, tops_in(session, key))
    except InputError as error:
        if not is_one_of_several:
            raise
        raise InputError(f"in {key}, {error.what}", wanted=error.wanted, hint=error.hint) from None
    if tune.melody is None:
        return view
    from nearhand.verbs.melodies import melody_in  # most tunes are chords alone

    return view._replace(melody=melody_in(session, key))


def _stretches(view: View) -> bool:
    """Whether a hand is asked for more than most hands reach."""
    hands = [hand for seen in view.chords if seen.voicing for hand in (seen.voicing.left, seen.voicing.right) if hand]
    return any(hand[-1].midi - hand[0].midi > SPAN for hand in hands)
