"""Tunes that music21 ships, read by it and by us: the same notes, spelled alike, for as long, in the same bars.

Data: music21's corpus (Essen folk song collection; O'Neill's Music of Ireland, 1850 tunes; Aird's Airs; Nottingham
music database). Accidentals hold through a bar in music21 where a file says that it is of version 2. Left out are tunes
with what music21 reads otherwise than the standard: it drops a note behind some decorations, breaks no rhythm beside a
grace note, counts grace notes in tuplets, lets no tie carry an accidental, and parts bars that are too long.
"""

from __future__ import annotations

import re
import warnings
from fractions import Fraction
from functools import lru_cache
from itertools import chain

import pytest

from nearhand.exchange.abc_files import read_abc
from nearhand.theory.chord import Chord

TRAPS = (
    r"[H~JRSLOPMTuvk]",
    r"[<>]\s*[^A-Ga-g=^_\s]",
    r"[^A-Ga-g,'\d/]\s*[<>]",
    r"Z|x|\[[A-Za-z]:|&|::",
    r"\(3[^|]*\{",
    r"(?s)[_^=].*-|-.*[_^=]",
)
FILES = [
    "essenFolksong/boehme10.abc", "essenFolksong/erk20.abc", "essenFolksong/kinder0.abc", "essenFolksong/ballad30.abc",
    "oneills1850/0301-0350.abc", "oneills1850/0001-0050.abc", "oneills1850/1556-1624.abc",
    "airdsAirs/book1.abc", "airdsAirs/book4.abc", "nottingham-dataset/reelsa-c.abc",
]  # fmt: skip
FEWEST = 45


@lru_cache
def tunes_of_the_corpus():
    """Every so many tunes of some files, without those that hold a trap; as texts of a file each."""
    from music21.common import getCorpusFilePath

    found = []
    for name in FILES:
        text = (getCorpusFilePath() / name).read_text(encoding="utf-8")
        tunes = re.split(r"(?m)^(?=X:)", text)[1:]
        step = max(1, len(tunes) // 8)
        for tune in tunes[::step]:
            header, _, body = tune.split("\n\n")[0].partition("\nK:")
            music = body.partition("\n")[2]
            is_sound = all(re.match("[A-Za-z]:|%", line) for line in header.splitlines())
            if is_sound and not any(re.search(trap, music) for trap in TRAPS):
                found.append(f"%abc-2.1\n{header}\nK:{body}\n")
    return tuple(found)


@lru_cache
def read_by_music21(text):
    from music21 import converter

    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return converter.parseData(text, format="abc").parts[0]


def bars_of_music21(part):
    """Names and quarters of a part's notes; what is tied within a bar, and rests in a row, put together."""
    found = []
    for measure in part.getElementsByClass("Measure"):
        bar = []
        for each in measure.notesAndRests:
            if "Harmony" in each.classes:
                continue
            name = (
                "z" if each.isRest else max(each.pitches, key=lambda pitch: pitch.ps).nameWithOctave.replace("-", "b")
            )
            quarters = 0 if each.duration.isGrace else Fraction(each.quarterLength)
            is_tied = not each.isRest and each.tie is not None and each.tie.type in ("stop", "continue")
            if bar and quarters and bar[-1][0] == name and (is_tied or name == "z"):
                bar[-1] = (name, bar[-1][1] + quarters)
            else:
                bar.append((name, quarters))
        found.append(bar)
    return [bar for bar in found if bar]


def bars_of_ours(tune):
    found = []
    tonic = tune.melody.tonic
    for bar in tune.melody.bars:
        own = []
        for note in bar.notes:
            own += [(str(tonic.up(grace)), 0) for grace in note.graces]
            name = "z" if note.interval is None else str(tonic.up(note.interval))
            own.append((name, Fraction(note.beats * 4) / bar.meter.unit))
        found.append(own)
    return found


def test_tunes_of_the_corpus_have_the_same_notes_in_music21():
    same = same_bars = 0
    for text in tunes_of_the_corpus():
        tune = read_abc(text, "corpus.abc")
        ours, theirs = bars_of_ours(tune), bars_of_music21(read_by_music21(text))
        if not theirs or any("as long as" in remark for remark in tune.remarks):
            continue  # music21 makes no bars of a tune with hardly a bar line
        assert [*chain(*ours)] == [*chain(*theirs)], text
        same += 1
        same_bars += ours == theirs
    assert same >= FEWEST
    assert same_bars >= same * 9 // 10


def test_tunes_of_the_corpus_have_the_same_key_in_music21():
    for text in tunes_of_the_corpus():
        key = read_by_music21(text).recurse().getElementsByClass("Key").first()
        if key is not None:
            name = f"{key.tonic.name.replace('-', 'b')} {key.mode}"
            assert str(read_abc(text, "corpus.abc").key) == name


@pytest.mark.parametrize("place", [0, 1])
def test_chord_symbols_of_the_corpus_stand_where_they_stand_in_music21(place):
    """The two reels of the Nottingham music database that music21 ships, each chord by its root and its quarter."""
    from music21.common import getCorpusFilePath

    text = (getCorpusFilePath() / "nottingham-dataset/reelsa-c.abc").read_text(encoding="utf-8")
    tune_text = "%abc-2.1\n" + re.split(r"(?m)^(?=X:)", text)[1:][place].split("\n\n")[0] + "\n"
    tune_text = tune_text.replace("D/f+", "D/f#")  # a sharp that is written in a way of its own
    tune = read_abc(tune_text, "corpus.abc")
    pickup = sum(note.beats for note in tune.melody.bars[0].notes) if tune.melody.has_pickup else 0

    ours, start = [], Fraction(pickup)
    for bar, melody_bar in zip(tune.progression.bars, tune.melody.bars[tune.melody.has_pickup :], strict=True):
        onset = start
        for slot in bar.slots:
            chord = slot.chord and slot.chord.in_key(tune.key)
            if isinstance(chord, Chord) and (not ours or ours[-1][1:] != (str(chord.root), str(chord.bass))):
                ours.append((onset, str(chord.root), str(chord.bass)))
            onset += slot.beats
        start += melody_bar.beats

    theirs = []
    for symbol in read_by_music21(tune_text).recurse().getElementsByClass("ChordSymbol"):
        onset = Fraction(symbol.getOffsetInHierarchy(read_by_music21(tune_text)))
        names = symbol.root().name.replace("-", "b"), symbol.bass().name.replace("-", "b")
        if not theirs or theirs[-1][1:] != names:
            theirs.append((onset, *names))

    assert len(ours) >= 18
    assert ours == theirs


HEAD = "%abc-2.1\nX:1\nM:4/4\nL:1/4\nK:C\n"
# A file; the notes by the standard, from memory; what music21 makes of it.
DIFFERENCES = [
    (HEAD + "C D E F|[K:D]F4|C4|]", "C4 D4 E4 F4 F#4 C#4", "C4 D4 E4 F4 F4 C4"),
    (HEAD + "C D E F|[L:1/8]G8|c8|]", "C4 D4 E4 F4 G4 C5", None),
    (HEAD + "C D E ^F-|F4|C4|]", "C4 D4 E4 F#4 C4", "C4 D4 E4 F#4 F4 C4"),
    (HEAD + "HC D E F|G4|c4|]", "C4 D4 E4 F4 G4 C5", "D4 E4 F4 G4 C5"),
    (HEAD + "V:one\nC4|D4|E4|]\nV:two\nc4|d4|e4|]", "C4 D4 E4", "C4 D4 E4 C5 D5 E5"),
    (HEAD.replace("%abc-2.1\n", "") + "^F F F2|G4|c4|]", "F#4 F#4 F#4 G4 C5", "F#4 F4 F4 G4 C5"),
    (HEAD.replace("K:C", "K:D phr ^f") + "F4|G4|c4|]", "F#4 G4 C5", "F4 G4 C5"),
    (HEAD.replace("K:C", "K:HP") + "F4|G4|c4|]", "F#4 G4 C#5", "F4 G4 C5"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "standard", "music21"), DIFFERENCES)
def test_where_music21_differs_the_standard_is_followed(text, standard, music21):
    theirs = [name for name, _ in chain(*bars_of_music21(read_by_music21(text)))]

    assert [str(note.pitch) for note in read_abc(text, "it.abc").melody.sounding()] == standard.split()
    assert music21 is None or theirs == music21.split()


# A file; quarters of its notes by the standard, from memory; what music21 makes of them.
LENGTHS = [
    (HEAD + "C>{e}D E2|F4|G4|]", "3/2 0 1/2 2 4 4", "1 0 1 2 4 4"),
    (HEAD + "C x2 D|F4|G4|]", "1 2 1 4 4", "1 1 4 4"),
    (HEAD + "[L:1/8]C4 D4|F8|G8|]", "2 2 4 4", "4 4 4 4 4 4"),
]


@pytest.mark.parametrize(("text", "standard", "music21"), LENGTHS)
def test_where_music21_counts_otherwise_the_standard_is_followed(text, standard, music21):
    ours, theirs = bars_of_ours(read_abc(text, "it.abc")), bars_of_music21(read_by_music21(text))

    assert " ".join(str(quarters) for _, quarters in chain(*ours)) == standard
    assert " ".join(str(quarters) for _, quarters in chain(*theirs)) == music21


def test_a_meter_in_groups_is_their_sum():
    text = HEAD.replace("4/4", "(2+3)/8").replace("1/4", "1/8") + "C5|F5|G5|]"

    assert str(read_abc(text, "it.abc").meter) == "5/8"
    assert read_by_music21(text).recurse().getElementsByClass("TimeSignature").first().ratioString == "23/8"
