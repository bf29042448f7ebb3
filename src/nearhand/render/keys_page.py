"""The keys that music may be in as a page: each with its probability and the reasons; then where the key turns."""

from __future__ import annotations

from itertools import pairwise

from nearhand.harmony.church_modes import mode_in_words
from nearhand.harmony.elimination import elimination_in_words
from nearhand.harmony.key_profiles import PROFILES
from nearhand.harmony.key_reasons import reasons_for
from nearhand.harmony.relatives import relative_in_words
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.keys import key_name
from nearhand.notation.numeral_writing import write_numeral
from nearhand.render.page import Cell, Line, Page, line, wrapped
from nearhand.theory.chord import Chord, relative_to
from nearhand.theory.key import Key
from nearhand.verbs.keys import KeysAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.harmony.modulation import Region

_REASONS_INDENT = 4


def draw_keys(answer: KeysAnswer, page: Page) -> list[Line]:
    """What the melody eliminates, the likeliest keys with their reasons, and the regions where there are several."""
    turns = [part for text in turns_in_words(answer.regions, answer.conventions) for part in wrapped(text, page.width)]
    heard = [part for text in melody_in_words(answer) for part in wrapped(text, page.width)]
    if heard and answer.chords:
        heard.insert(0, line(Cell("The melody", "label")))
    legend = f"r: correlation with the profile of {PROFILES[answer.profile].source}"
    profile = wrapped(legend, page.width, role="label") if heard else []
    if len(answer.regions) > 1:
        once = line(Cell("Taken as one key throughout", "label"))
        return [*turns, *heard, once, *_ranking(answer, page), *profile]
    return [*heard, *_ranking(answer, page), *turns, *profile]


def _ranking(answer: KeysAnswer, page: Page) -> list[Line]:
    names = [key_name(fit.key, answer.conventions) for fit in answer.fits]
    width = max(map(len, names)) + 2
    reasons = ["; ".join(reasons_in(answer, fit.key)) for fit in answer.fits]
    percents = [f"{fit.percent:3d} %" for fit in answer.fits]
    in_one_line = width + len(percents[0]) + 2 + max(map(len, reasons)) <= page.width
    lines: list[Line] = []
    for name, percent, reason in zip(names, percents, reasons, strict=True):
        head = (Cell(name.ljust(width), "key"), Cell(percent, "number"))
        if in_one_line:
            lines.append(line(*head, "  ", reason))
        else:
            lines += [line(*head), *wrapped(reason, page.width, _REASONS_INDENT)]
    return lines


def reasons_in(answer: KeysAnswer, key: Key) -> tuple[str, ...]:
    """The reasons for one of an answer's keys."""
    chords, notes, conventions = answer.chords, answer.notes, answer.conventions
    return reasons_for(key, chords, notes, conventions, lengths=answer.lengths, profile=answer.profile)


def melody_in_words(answer: KeysAnswer) -> list[str]:
    """What a melody says of its signature, of a church mode, of relative major or minor; nothing without a melody."""
    if not answer.notes:
        return []
    notes, lengths, conventions = answer.notes, answer.lengths, answer.conventions
    sentences = (
        elimination_in_words(notes, lengths, conventions, answer.fits[0].key),
        mode_in_words(answer.fits, notes, conventions),
        relative_in_words(answer.fits[0], answer.relative, notes, lengths, conventions),
    )
    return [sentence for sentence in sentences if sentence]


def turns_in_words(regions: tuple[Region, ...], conventions: Conventions) -> list[str]:
    """Where the key turns: a sentence a region, or one that it does not; none without chords.

    >>> from nearhand.harmony.modulation import regions_of
    >>> from nearhand.verbs.tune import tune_from_text
    >>> tune = tune_from_text("| C | F G7 | C | Am | D7 | G |")
    >>> for sentence in turns_in_words(regions_of(tune.progression), Conventions()):
    ...     print(sentence)
    Bars 1 to 3: C major.
    From bar 4: G major; pivot Am in bar 4, vi in C major and ii in G major.
    """
    if len(regions) < 2:
        return ["The key does not turn."] if regions else []
    first = regions[0]
    bars = (
        f"Bar {first.first_bar}" if first.first_bar == first.last_bar else f"Bars {first.first_bar} to {first.last_bar}"
    )
    sentences = [f"{bars}: {key_name(first.key, conventions)}."]
    for before, region in pairwise(regions):
        key = key_name(region.key, conventions)
        where = "From within" if before.last_bar == region.first_bar else "From"
        sentences.append(f"{where} bar {region.first_bar}: {key}; {_pivot(before, region, conventions)}.")
    return sentences


def _pivot(before: Region, region: Region, conventions: Conventions) -> str:
    if region.pivot is None:
        return "no chord belongs to both keys: a direct change"
    chord = region.pivot.chord
    roles = " and ".join(
        f"{numeral_in(chord, key, conventions)} in {key_name(key, conventions)}" for key in (before.key, region.key)
    )
    return f"pivot {write_chord(chord, conventions)} in bar {region.pivot.bar}, {roles}"


def numeral_in(chord: Chord, key: Key, conventions: Conventions) -> str:
    """The numeral of a chord as one of a key."""
    return write_numeral(relative_to(chord, key), key.mode, conventions)
