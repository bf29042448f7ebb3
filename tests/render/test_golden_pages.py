"""Whole pages, compared with the texts in ``pages``.

``PYTHONPATH=src:tests python tests/render/test_golden_pages.py`` writes them anew; read what has changed before you
keep it.
"""

from __future__ import annotations

import contextlib
import tempfile
from pathlib import Path

import pytest
from render.page_words import LAMENT, WIDTHS, page

PAGES = Path(__file__).parent / "pages"
PAGE_HEAD = "===== {width} columns, {characters} ====="

SPLIT_BARS = "G major: |: [3/4] G | C A7/C# | G/D D7 :| Em Em/D C |: Am / D7 | G :|"
RESTS = "Bb major: | Bb7 | N.C. | Eb7 N.C. | Bb7 |"
MANY_KINDS = "C major: | C | E7 | Am | Fm6 | Db/F | G7b9 | Bdim7 | C6 |"
BY_WHAT_THEY_DO = "C major: | C Ab7 | C/G G7 | C Ebm | C | F/C Bb/C | C D#dim7 | C/E Bb7 | C Db7 | C |"
LED_IN_FIFTHS = "'A minor: | i | iv | V7 | i |'"

PICKED_UP = '"F minor: 5_ | 1 {2}1 [7_ #7_] 1 | b5 4 3:3/2 [2 1]:1/2 | 1(tr) - r r"'
UNDER_CHORDS = "| Fm | Bbm C7 | Fm |"
OVER_THEM = '"5_ | 1 2 3 [2 1] | 4 6 5 #7_ | 1 - - r"'

LINES = {
    "lament-in-c-minor": [LAMENT, "to C minor"],
    "two-keys": ['show "| Em | Bm/D | Am/C | B7 |" --to "E minor,C minor"'],
    "split-bars-and-repeats": [SPLIT_BARS],
    "rests": [RESTS],
    "voicing-none": [SPLIT_BARS, "voice none", "degrees major"],
    "loop": ["A minor: |: Am | Dm/F | E7 :|", "loop on"],
    "keys": ["keys | Am | F | C | G |"],
    "keys-that-turn": ['keys "| C F | G7 C | Am D7 | G | Ab Db | Eb7 Ab |" --melody "C4 Bb3"'],
    "explain": [f"explain {MANY_KINDS}"],
    "explain-what-chords-do": [f"explain {BY_WHAT_THEY_DO}"],
    "explain-one-chord": ["A minor: | Am Am(maj7) | Am7 Am6 | F7 | E | Am |", "explain 5"],
    "borrow": ["borrow Eb minor"],
    "instead": [f"instead {MANY_KINDS} 2"],
    "instead-in-flats": ["instead Ab: | Fm7 | Bbm7 | Eb7 | Abmaj7 | 3"],
    "help": ["help"],
    "help-on-a-topic": ["help minor"],
    "tour": ["tour 8"],
    "spoken": ["layout spoken", SPLIT_BARS],
    "spoken-in-two-keys": ["layout spoken", f"show {LAMENT} --to 'E minor,C minor'"],
    "spoken-lines": ["layout spoken", "lines Eb: | Eb | Cm7 F7 | Ab/Bb Bb7 | Eb | --voicing four-part"],
    "spoken-explain": ["layout spoken", f"explain {MANY_KINDS}"],
    "spoken-why": ["layout spoken", "why Bb: | Cm7 | F7 | Bb | 2"],
    "spoken-others": ["layout spoken", LAMENT, "others --count 3"],
    "spoken-keys": ["layout spoken", "keys | Am | F | C | G |"],
    "spoken-instead": ["layout spoken", f"instead {MANY_KINDS} 2"],
    "spoken-borrow": ["layout spoken", "borrow Eb minor"],
    "list": ["list charts"],
    "chart-with-sections": ["open charts/two-doors.toml"],
    "drop2-in-two-keys": ['show "E minor: | Em | Bm/D | Am7/C | B7 |" --to "E minor,C minor" --voicing drop2'],
    "four-part-with-a-broken-rule": [f"show {LED_IN_FIFTHS} --voicing four-part --top 'A4 A4 B4 E4'"],
    "left-fifth": ["C: | C | G/B | Am N.C. | F |", "left fifth", "loop on"],
    "lines-in-four-part": ["lines Eb: | Eb | Cm7 F7 | Ab/Bb Bb7 | Eb | --voicing four-part"],
    "lines-where-voices-enter": ["lines C: | C | G7 | N.C. | Am | F6 G13 | C |"],
    "why": ["why Bb: | Cm7 | F7 | Bb | 2"],
    "why-in-four-part": [f"why {LED_IN_FIFTHS} 3 --voicing four-part"],
    "others": [LAMENT, "others 2", "others --count 4"],
    "melody": [f"melody {PICKED_UP}"],
    "melody-in-five-keys": [f'melody {PICKED_UP} --to "Bb,Eb,G#,C#,E" --way down'],
    "melody-to-be-sung": [f"melody {PICKED_UP} --sing syllables"],
    "melody-over-chords": [UNDER_CHORDS, "voice none", f"melody {OVER_THEM.strip(chr(34))}", "next"],
    "melody-on-top": [f"show {UNDER_CHORDS} --melody {OVER_THEM} --top melody"],
    "tones": [f"tones {UNDER_CHORDS} --melody {OVER_THEM}"],
    "singer": [f'singer {UNDER_CHORDS} --tune {OVER_THEM} --range "alto; baritone" --for "alto sax, guitar"'],
    "singer-whom-nothing-fits": ['singer --key F --tune "C4 F5" --range "A3 B4"'],
    "parts": [UNDER_CHORDS, f"melody {OVER_THEM.strip(chr(34))}", 'parts --for "trumpet, alto sax, guitar"'],
    "difficulty": [f"difficulty {UNDER_CHORDS} --choose 2"],
    "spoken-melody": ["layout spoken", f"melody {PICKED_UP} --to Bb"],
    "spoken-tones": ["layout spoken", UNDER_CHORDS, f"melody {OVER_THEM.strip(chr(34))}", "tones"],
    "spoken-singer": ["layout spoken", f'singer {UNDER_CHORDS} --tune {OVER_THEM} --range "alto; baritone"'],
    "spoken-parts": ["layout spoken", f'parts {UNDER_CHORDS} --for "horn, guitar"'],
    "spoken-difficulty": ["layout spoken", f"difficulty {UNDER_CHORDS} --choose 1"],
    "help-on-melodies": ["help melodies"],
}
CHARTS = {
    "two-doors.toml": 'title = "Two Doors"\nkey = "F# minor"\ntempo = 84\nnotes = "Knock first."\n'
    '[[sections]]\nname = "Front"\nchords = "|: F#m | C#7/E# :|"\n'
    '[[sections]]\nname = "Back"\nmeter = "3/4"\nchords = "| Bm C#7 | F#m ||"\n',
    "broken.toml": 'title = "Broken"\nkey = "H minor"\n[[sections]]\nchords = "C"\n',
    "no-title.toml": '[[sections]]\nchords = "| Bb | Eb | F7 | Bb |"\n',
}


def whole_text(lines: list[str]) -> str:
    """The pages of all widths, in signs and in plain characters."""
    parts = []
    for width in WIDTHS:
        for plain in (False, True):
            parts.append(PAGE_HEAD.format(width=width, characters="plain characters" if plain else "signs"))
            parts.append(page(*lines, width=width, plain=plain))
    return "\n".join(parts) + "\n"


def write_charts(folder: Path) -> None:
    (folder / "charts").mkdir()
    for name, text in CHARTS.items():
        (folder / "charts" / name).write_text(text, encoding="utf-8")


@pytest.mark.parametrize("name", LINES)
def test_a_page_is_drawn_as_it_is_kept(name, tmp_path, monkeypatch):
    write_charts(tmp_path)
    monkeypatch.chdir(tmp_path)

    assert whole_text(LINES[name]) == (PAGES / f"{name}.txt").read_text(encoding="utf-8")


def test_no_page_is_kept_that_nobody_draws():
    assert {path.stem for path in PAGES.iterdir()} == set(LINES)


def main() -> None:
    PAGES.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory() as folder, contextlib.chdir(folder):
        write_charts(Path(folder))
        for name, lines in LINES.items():
            (PAGES / f"{name}.txt").write_text(whole_text(lines), encoding="utf-8")


if __name__ == "__main__":
    main()
