"""The short cautions of practising and singing: where the work can hurt, and who helps."""

from __future__ import annotations

from nearhand.theory.key import Key

CARE_IN_TWELVE_KEYS = (
    "Twelve keys are many: rest between them, keep the hands loose, and stop when anything hurts; "
    "pain that stays belongs before a teacher or a doctor."
)
CARE_WITH_STRETCHES = (
    "Wide stretches strain the hand: roll or leave out what does not lie easily, and stop when it hurts; "
    "ask a teacher or a clinician about pain that stays."
)

CARE_OF_VOICES = (
    "Comfort beats range: a key is right when the top notes come easily at the end of the evening, too. A sore or "
    "hoarse singer rests and asks a teacher or a doctor."
)


def care_in(keys: tuple[Key, ...]) -> str:
    """What is to be said of practising in so many keys; nothing of a few."""
    return CARE_IN_TWELVE_KEYS if len(keys) >= 12 else ""
