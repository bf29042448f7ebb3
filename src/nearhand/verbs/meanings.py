"""What the words that may follow a verb mean, from the tables that define them: for help and completion."""

from __future__ import annotations

from collections.abc import Callable

Meanings = tuple[tuple[str, str], ...]


def meanings_of(verb: str) -> Meanings:
    """Words that may follow a verb and what each means; nothing for most verbs.

    >>> dict(meanings_of("left"))["fifth"]
    'root, fifth and octave; over a slash bass its octave alone'
    """
    return _MEANINGS[verb]() if verb in _MEANINGS else ()


def _families() -> Meanings:
    from nearhand.voicing.families import FAMILIES

    return (*((family.name, family.help) for family in FAMILIES.values()), ("none", "the chord tones alone"))


def _patterns() -> Meanings:
    from nearhand.voicing.left_hand import PATTERNS

    return tuple(PATTERNS.items())


def _costs() -> Meanings:
    from nearhand.voicing.weights import COSTS

    return tuple(COSTS.items())


def _spans() -> Meanings:
    from nearhand.verbs.wishing import SPANS

    return tuple((name, f"{semitones} semitones") for name, semitones in SPANS.items())


def families_of_instruments() -> dict[str, str]:
    """The names of all instruments and what they belong to.

    >>> families_of_instruments()["alto sax"]
    'woodwinds'
    """
    from nearhand.melody.instruments import INSTRUMENTS

    return {instrument.name: instrument.family for instrument in INSTRUMENTS.values()}


def _instruments() -> Meanings:
    families: dict[str, list[str]] = {}
    for name, family in families_of_instruments().items():
        families.setdefault(family, []).append(name)
    return tuple((family, ", ".join(names)) for family, names in families.items())


def _settings() -> Meanings:
    from nearhand.verbs.lasting import SETTINGS

    return tuple((setting.name, setting.meaning) for setting in SETTINGS.values())


def _topics() -> Meanings:
    from nearhand.verbs.topics import TOPICS

    return tuple((topic.name, topic.summary) for topic in TOPICS)


_MEANINGS: dict[str, Callable[[], Meanings]] = {
    "voice": _families,
    "left": _patterns,
    "weigh": _costs,
    "span": _spans,
    "parts": _instruments,
    "set": _settings,
    "help": _topics,
}
"""Verb to what knows the words that may follow it; each imports its table when it is asked."""
