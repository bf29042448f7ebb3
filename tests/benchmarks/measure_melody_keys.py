"""How often the key of a folk tune is found: ``python tests/benchmarks/measure_melody_keys.py [CACHE]``.

All folk tunes in ABC that music21 ships, ours against the key analysis of music21 on the same notes; then the sopranos
of Bach's chorales, which were not looked at before the weights stood. Reading takes a quarter of an hour; CACHE is
a file that keeps what was read for the next time.

The truth is the tune's K: field. Left out are tunes with more than one, and with fewer than eight notes. The fields of
the Essen collection name the tonic alone: there the mode is that of the third which sounds longer above it, and a minor
second (phrygian), a major sixth (dorian), a minor seventh (mixolydian) or an augmented fourth (lydian) that sounds
longer than its rival makes the tune a modal one. Its Chinese songs (Han) are pentatonic, and their fields name the note
do, on which one in six ends: they are counted apart. A chorale's key is its signature with the last note of the bass.

The weights were fitted on every other tune of each collection, from the first one on, and rounded with both halves in
view. The tables show the other half, without those tunes whose notes have come before.
"""

from __future__ import annotations

import pickle
import re
import sys
import warnings
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from multiprocessing import Pool
from pathlib import Path
from typing import Any, NamedTuple

FOLDERS = ("essenFolksong", "oneills1850", "airdsAirs", "ryansMammoth", "miscFolk")
NAMES = {
    "essenFolksong": "Essen, European",
    "han": "Essen, Han",
    "oneills1850": "O'Neill's Music of Ireland",
    "airdsAirs": "Aird's Airs",
    "ryansMammoth": "Ryan's Mammoth Collection",
    "miscFolk": "Northumbrian and others",
    "chorales": "Bach's chorales, soprano",
}
THEIRS = {
    "Krumhansl-Schmuckler": "KrumhanslSchmuckler",
    "Temperley-Kostka-Payne": "TemperleyKostkaPayne",
    "Aarden-Essen": "AardenEssen",
    "Bellman-Budge": "BellmanBudge",
    "simple weights": "SimpleWeights",
}
PLACES = {"F": -1, "C": 0, "G": 1, "D": 2, "A": 3, "E": 4, "B": 5}
MODES = {
    "": "major", "maj": "major", "ion": "major", "m": "minor", "min": "minor", "aeo": "minor",
    "mix": "mixolydian", "dor": "dorian", "phr": "phrygian", "lyd": "lydian",
}  # fmt: skip
MINOR_FAMILY = ("minor", "dorian", "phrygian")
FEWEST_NOTES = 8


class Tune(NamedTuple):
    """A tune as it was read: where it stands, its key, its notes as places and quarters, and what music21 says.

    ``theirs``: to each of its profiles the semitone of the tonic above C and the mode.
    """

    collection: str
    tonic: int
    mode: str
    notes: tuple[tuple[int, float], ...]
    theirs: dict[str, tuple[int, str]]

    @property
    def family(self) -> str:
        """Major or minor, by the third."""
        return family(self.mode)


def family(mode: str) -> str:
    """Major or minor, by the third of a mode."""
    return "minor" if mode in MINOR_FAMILY else "major"


def place(name: str) -> int:
    """The place of one of music21's note names on the line of fifths."""
    return PLACES[name[0]] + 7 * (name.count("#") - name.count("-"))


def read_key(text: str) -> tuple[int, str] | None:
    """Tonic and mode of a K: field; None for one that is no plain key."""
    found = re.fullmatch(r"([A-G])(#|b)?\s*([A-Za-z]*)", text)
    word = "" if found is None else found[3].lower() if found[3] == "m" else found[3].lower()[:3]
    if found is None or word not in MODES:
        return None
    return PLACES[found[1]] + {"#": 7, "b": -7}.get(found[2], 0), MODES[word]


def abc_tunes() -> Iterator[tuple[str, str, str]]:
    """Collection, file and text of every tune."""
    import music21

    root = Path(music21.__file__).parent / "corpus"
    for folder in FOLDERS:
        for path in sorted((root / folder).glob("*.abc")):
            parts = re.split(r"(?m)^(?=X:)", path.read_text(encoding="utf-8", errors="replace"))
            for text in parts[1:] if len(parts) > 1 else parts:
                yield folder, path.name, text


def read_tune(item: tuple[str, str, str]) -> Tune | None:
    """A tune with its key and its notes; None for one that is left out."""
    from music21 import converter, stream

    folder, file, text = item
    fields = {field.split("%")[0].strip() for field in re.findall(r"(?m)(?:^\s*|\[)K:([^\]\n]*)", text)}
    key = read_key(next(iter(fields))) if len(fields) == 1 else None
    if key is None:
        return None
    warnings.filterwarnings("ignore")
    try:
        score = converter.parseData(text, format="abc")
        notes = notes_of(score.scores[0] if isinstance(score, stream.Opus) else score)
    except Exception as error:  # whatever its reader of ABC raises
        print(f"{file}: {error!r}"[:120], file=sys.stderr)
        return None
    if len(notes) < FEWEST_NOTES:
        return None
    tonic, mode = key
    if folder == "essenFolksong":
        mode = sung_mode(tonic, notes)
    collection = "han" if file.startswith("han") else folder
    return None if mode is None else Tune(collection, tonic, mode, notes, asked_of_music21(notes))


def notes_of(part: Any) -> tuple[tuple[int, float], ...]:
    """The notes of a stream in order, tied ones as one, of chords the highest; grace notes left out."""
    from music21 import chord, note

    found: list[tuple[int, float]] = []
    for element in part.recurse().notes:
        if type(element) not in (note.Note, chord.Chord) or not element.quarterLength:
            continue
        pitch = max(element.pitches, key=lambda each: each.midi)
        if found and element.tie is not None and element.tie.type in ("stop", "continue"):
            found[-1] = found[-1][0], found[-1][1] + float(element.quarterLength)
        else:
            found.append((place(pitch.name), float(element.quarterLength)))
    return tuple(found)


def sung_mode(tonic: int, notes: Iterable[tuple[int, float]]) -> str | None:
    """The mode of which the notes over a tonic sound longest; None where no third decides."""
    time: dict[int, float] = defaultdict(float)
    for at, quarters in notes:
        time[at - tonic] += quarters
    if time[4] == time[-3]:
        return None
    if time[-3] > time[4]:
        return "phrygian" if time[-5] > time[2] else "dorian" if time[3] > time[-4] else "minor"
    return "lydian" if time[6] > time[-1] else "mixolydian" if time[-2] > time[5] else "major"


def asked_of_music21(notes: Iterable[tuple[int, float]]) -> dict[str, tuple[int, str]]:
    """What each of music21's profiles says of the notes."""
    from music21 import analysis, stream
    from music21.note import Note

    names = {at: name for name, at in PLACES.items()}
    spelled = [(names[(at + 1) % 7 - 1], (at + 1) // 7, quarters) for at, quarters in notes]
    signs = {True: "#", False: "-"}
    melody = stream.Stream(
        [Note(letter + signs[sharp > 0] * abs(sharp), quarterLength=q) for letter, sharp, q in spelled]
    )
    answers = {name: getattr(analysis.discrete, kind)().getSolution(melody) for name, kind in THEIRS.items()}
    return {name: (answer.tonic.pitchClass, answer.mode) for name, answer in answers.items()}


def chorales() -> Iterator[Tune]:
    """The sopranos of Bach's chorales whose signature and last bass note make a major or a minor key."""
    from music21 import corpus

    for score in corpus.chorales.Iterator(returnType="stream"):
        signatures = {each.sharps for each in score.parts[0].recurse().getElementsByClass("KeySignature")}
        if len(score.parts) != 4 or len(signatures) != 1:
            continue
        (sharps,) = signatures
        tonic = place(list(score.parts[-1].recurse().notes)[-1].pitch.name)
        mode = {0: "major", 3: "minor"}.get(tonic - sharps)
        if mode is not None:
            notes = notes_of(score.parts[0])
            yield Tune("chorales", tonic, mode, notes, asked_of_music21(notes))


def all_tunes(cache: Path | None) -> list[Tune]:
    """Every tune, from the cache where there is one."""
    if cache is not None and cache.exists():
        return pickle.loads(cache.read_bytes())  # a file of our own making
    with Pool() as pool:
        read = [tune for tune in pool.imap(read_tune, abc_tunes(), chunksize=20) if tune is not None]
    read += chorales()
    if cache is not None:
        cache.write_bytes(pickle.dumps(read))
    return read


def held_out(tunes: Iterable[Tune]) -> Iterator[Tune]:
    """The tunes on which no weight was fitted: every other one of each collection, all chorales; each only once."""
    numbers: Counter[tuple[str, bool]] = Counter()
    seen = set()
    for tune in tunes:
        group = (tune.collection, tune.mode in ("major", "minor"))
        is_new = (tune.tonic, tune.notes) not in seen
        seen.add((tune.tonic, tune.notes))
        if is_new and (numbers[group] % 2 or not group[1] or tune.collection == "chorales"):
            yield tune
        numbers[group] += 1


def print_accuracy(tunes: list[Tune], by_third: bool = False) -> None:
    """A table, a row a collection: percent of keys found by each of our profiles, by counted notes, and by music21.

    The mode must be the very one, or with ``by_third`` one of its third. Music21 names major and minor alone.
    """
    from nearhand.harmony.key_profiles import PROFILES
    from nearhand.harmony.melody_keys import rank_keys_of_melody
    from nearhand.theory.pitch_class import pitch_class

    rows: dict[str, Counter[str]] = defaultdict(Counter)
    for tune in tunes:
        row = rows[tune.collection]
        row["tunes"] += 1
        row["minor"] += tune.mode == "minor"
        notes, lengths = [pitch_class(at) for at, _ in tune.notes], [quarters for _, quarters in tune.notes]
        answers = {name: rank_keys_of_melody(notes, lengths, name)[0].key for name in PROFILES}
        answers["counted"] = rank_keys_of_melody(notes)[0].key
        for name, key in answers.items():
            mode = family(key.mode.name) if by_third else key.mode.name
            row[name] += (key.tonic.fifths, mode) == (tune.tonic, tune.family if by_third else tune.mode)
        for name, answer in tune.theirs.items():
            row[name] += answer == (tune.tonic * 7 % 12, tune.family if by_third else tune.mode)
    columns = [*PROFILES, "counted", *THEIRS]
    print(f"| collection | tunes | in minor | {' | '.join(columns)} |")
    print(f"|---|--:|--:|{'--:|' * len(columns)}")
    for name, row in rows.items():
        shares = [f"{100 * row[column] / row['tunes']:.1f}" for column in columns]
        print(f"| {NAMES[name]} | {row['tunes']:,} | {row['minor']:,} | {' | '.join(shares)} |")


def print_probabilities(tunes: list[Tune]) -> None:
    """How often the first key is right, by the probability that it is given."""
    from nearhand.harmony.melody_keys import rank_keys_of_melody
    from nearhand.theory.pitch_class import pitch_class

    right: dict[int, list[bool]] = defaultdict(list)
    for tune in tunes:
        best = rank_keys_of_melody([pitch_class(at) for at, _ in tune.notes], [beats for _, beats in tune.notes])[0]
        answer = (best.key.tonic.fifths, best.key.mode.name)
        right[min(int(10 * best.share), 9)].append(answer == (tune.tonic, tune.mode))
    for tenth, answers in sorted(right.items()):
        share = 100 * sum(answers) / len(answers)
        print(f"{10 * tenth:3d} to {10 * tenth + 10:3d} %: {len(answers):5d} tunes, {share:5.1f} % right")


PHRASES = {"first 8 notes": slice(8), "last 8": slice(-8, None), "first 16": slice(16), "last 16": slice(-16, None)}


def print_phrases(tunes: list[Tune]) -> None:
    """How often the key of a tune is found from a few of its notes, ours beside each profile of music21."""
    from nearhand.harmony.melody_keys import rank_keys_of_melody
    from nearhand.theory.pitch_class import pitch_class

    print(f"| notes | nearhand | {' | '.join(THEIRS)} |")
    print(f"|---|--:|{'--:|' * len(THEIRS)}")
    for words, part in PHRASES.items():
        found: Counter[str] = Counter()
        for tune in tunes:
            notes, truth = tune.notes[part], (tune.tonic * 7 % 12, tune.mode)
            best = rank_keys_of_melody([pitch_class(at) for at, _ in notes], [beats for _, beats in notes])[0].key
            found["ours"] += (best.tonic.fifths, best.mode.name) == (tune.tonic, tune.mode)
            found.update(name for name, answer in asked_of_music21(notes).items() if answer == truth)
        shares = [f"{100 * found[name] / len(tunes):.1f}" for name in ("ours", *THEIRS)]
        print(f"| {words} | {' | '.join(shares)} |")


def print_modes(tunes: list[Tune]) -> None:
    """How often a church mode is named, how often it is that of the file, and how often a tune's tonic is right."""
    from nearhand.harmony.melody_keys import rank_keys_of_melody
    from nearhand.theory.pitch_class import pitch_class

    rows: dict[str, Counter[str]] = defaultdict(Counter)
    for tune in tunes:
        key = rank_keys_of_melody([pitch_class(at) for at, _ in tune.notes], [beats for _, beats in tune.notes])[0].key
        if key.mode.name not in ("major", "minor"):
            rows[key.mode.name]["named"] += 1
            rows[key.mode.name]["tonic"] += key.tonic.fifths == tune.tonic
            rows[key.mode.name]["right"] += (key.tonic.fifths, key.mode.name) == (tune.tonic, tune.mode)
    for mode, row in rows.items():
        print(f"{mode}: {row['named']} tunes, {row['right']} right, {row['tonic']} with the right tonic")


if __name__ == "__main__":
    EVERY_TUNE = list(held_out(all_tunes(Path(sys.argv[1]) if len(sys.argv) > 1 else None)))
    PLAIN = [tune for tune in EVERY_TUNE if tune.mode in ("major", "minor")]
    print(
        "Major and minor, percent of keys found exactly: ours by profile, ours by counted notes, music21's by profile"
    )
    print_accuracy(PLAIN)
    MODAL = [tune for tune in EVERY_TUNE if tune.mode not in ("major", "minor")]
    print("\nOther modes, all tunes: percent with the right tonic and mode")
    print_accuracy(MODAL)
    print("\nOther modes, all tunes: percent with the right tonic and third")
    print_accuracy(MODAL, by_third=True)
    print("\nChurch modes that are named first, Chinese songs left out")
    print_modes([tune for tune in EVERY_TUNE if tune.collection != "han"])
    EUROPEAN = [tune for tune in PLAIN if tune.collection not in ("han", "chorales")]
    print(f"\nKeys found from a few notes, every tenth tune ({len(EUROPEAN[::10])}), Chinese songs left out")
    print_phrases(EUROPEAN[::10])
    print("\nThe probability of the first key, Chinese songs left out")
    print_probabilities([tune for tune in PLAIN if tune.collection != "han"])
