"""What the words that may follow a verb mean, from the tables that define them: for help and completion."""

from __future__ import annotations


def meanings_of(verb: str) -> tuple[tuple[str, str], ...]:
    """Words that may follow a verb and what each means; nothing for most verbs.

    >>> dict(meanings_of("left"))["fifth"]
    'root, fifth and octave; over a slash bass its octave alone'
    """
    if verb == "voice":
        from nearhand.voicing.families import FAMILIES

        return (*((family.name, family.help) for family in FAMILIES.values()), ("none", "the chord tones alone"))
    if verb == "left":
        from nearhand.voicing.left_hand import PATTERNS

        return tuple(PATTERNS.items())
    if verb == "weigh":
        from nearhand.voicing.weights import COSTS

        return tuple(COSTS.items())
    if verb == "span":
        from nearhand.verbs.wishing import SPANS

        return tuple((name, f"{semitones} semitones") for name, semitones in SPANS.items())
    return ()
