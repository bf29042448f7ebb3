"""Answers for ears: no grid, no keyboard, no sign, one fact a line, and nothing left out that the drawn page says."""

from __future__ import annotations

import pytest
from render.page_words import CHARTS, LAMENT, WIDTHS, last_answer, page, without_codes

from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.conventions import Conventions
from nearhand.render.answers import draw
from nearhand.render.page import Page, text_of
from nearhand.render.spoken import chord_in_words, in_words, number_in_words, numeral_in_words
from nearhand.verbs.answers import ViewsAnswer
from nearhand.verbs.table import VERBS

LINES = [
    "show",
    "lines",
    "why 2",
    "others",
    "explain",
    "explain 2",
    "keys",
    "cadences",
    "borrow",
    "instead 2",
    "to all",
]
DRAWN = set("|▀▁'_♭♯𝄫𝄪°øΔ=[]")


def spoken(*lines, width=80, plain=False):
    return page(*lines[:-1], "layout spoken", lines[-1], width=width, plain=plain)


@pytest.mark.parametrize("line", LINES)
@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
def test_a_spoken_page_is_of_words_alone_and_fits_its_width(chart, line):
    answer = last_answer(f"open {chart}", "layout spoken", line, plain=True)
    for width in WIDTHS:
        text = text_of(draw(answer, Page(width, plain=True)))
        assert max(map(len, text.split("\n"))) <= width
        assert text.isascii()
        title = chart.read_text(encoding="utf-8").split('"')[1]
        assert set(text.replace(title, "")) & DRAWN <= {"'"}
        assert "  " not in text and not any(line.startswith(" ") for line in text.split("\n"))


@pytest.mark.parametrize("line", ["show", "voice drop2", "voice none", "voice four-part"])
@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
def test_every_chord_and_every_note_that_is_drawn_is_spoken(chart, line):
    answer = last_answer(f"open {chart}", line)
    assert isinstance(answer, ViewsAnswer)
    heard = " ".join(spoken(f"open {chart}", line, width=10_000).split())
    (view,) = answer.views
    places = [seen for seen in view.chords if seen.chord is not None]
    for number, seen in enumerate(places, start=1):
        start = heard.index(f"Bar {seen.moment.bar}, chord {number}: ")
        following = heard.find(f", chord {number + 1}: ")
        told = heard[start : following if following > 0 else None]
        names = [str(pitch) for pitch in seen.voicing.pitches] if seen.voicing else list(map(str, seen.chord.tones))
        for name in names:
            assert spelled_out(name) in told, (number, name, told)


def spelled_out(note):
    """An ASCII note name in words, worked out apart from the page."""
    letter, rest = note[0], note[1:]
    signs = rest.rstrip("0123456789")
    words = {"": "", "b": " flat", "bb": " double flat", "#": " sharp", "##": " double sharp"}[signs]
    octave = rest[len(signs) :]
    return letter + words + (f" {octave}" if octave and words else octave)


def test_the_lament_is_told_chord_by_chord():
    assert spoken(LAMENT, "to C minor").split("\n")[:9] == [
        "C minor: 3 flats (B flat E flat A flat), down a major third from E minor.",
        "Bar 1, chord 1: Cm, C minor, i, number 1 minor.",
        "Right hand E flat 4, G4, C5.",
        "Left hand C3.",
        "Bar 2, chord 2: Gm over B flat, G minor over B flat, v6, number 5 minor over 7.",
        "Right hand D4, G4, B flat 4.",
        "Left hand B flat 2, the bass down 2.",
        "Right hand, low to high: down 1, held, down 2.",
        "Bar 3, chord 3: Fm over A flat, F minor over A flat, iv6, number 4 minor over 6.",
    ]


def test_repeats_sections_meters_and_rests_are_told():
    text = spoken("voice none", "Bb: |: [3/4] Bb7 | N.C. | (Eb7) :| [4/4] F7 |")

    told = [line for line in text.split("\n") if not line.startswith("Notes")]
    assert told[1:8] == [
        "From here 3 4 time.",
        "A repeat begins.",
        "Bar 1, chord 1: B flat 7, B flat dominant seventh, I7, number 1 7.",
        "Bar 2: no chord.",
        "Bar 3, chord 2: E flat 7, E flat dominant seventh, IV7, number 4 7, may be left",
        "out.",
        "The repeat ends.",
    ]


@pytest.mark.parametrize("plain", [False, True], ids=["signs", "plain"])
@pytest.mark.parametrize("line", LINES)
def test_plain_characters_change_nothing_for_ears(line, plain):
    assert spoken(LAMENT, "to Bb", line, plain=plain) == spoken(LAMENT, "to Bb", line)


@pytest.mark.parametrize("setting", ["symbols jazz", "symbols compact", "figures raised"])
def test_styles_made_for_eyes_are_not_spoken(setting):
    chart = "C: | Cmaj7 | F#m7b5 B7 | Em7/D |"

    assert spoken(setting, chart) == spoken(chart)


def test_the_option_holds_for_one_answer():
    lines = [f'show "{LAMENT}" --layout spoken']

    assert page(*lines) == spoken(LAMENT) or "Right hand E4, G4, B4." in page(*lines)
    assert page(*lines, "show") == page(LAMENT, "show")


@pytest.mark.parametrize("verb", [verb for verb in VERBS if any(o.name == "layout" for o in verb.options)], ids=str)
def test_every_verb_that_takes_the_option_speaks(verb):
    number = " 1" if verb.name in ("why", "instead") else ""
    line = f"{verb.name} C --layout spoken" if verb.name == "borrow" else f"{verb.name}{number} --layout spoken"
    if verb.name in ("singer", "parts"):
        pytest.skip("drawn as sentences")
    text = page(LAMENT, "melody 1 - 3 -", line)

    assert text.isascii()
    assert "|" not in text


def test_signs_are_words_where_they_stand():
    assert in_words("B♭4, F♯ and E𝄫; ♭VI of A♭.") == "B flat 4, F sharp and E double flat; flat VI of A flat."
    assert in_words("two sharps, 3 flats; a minor half-diminished") == "two sharps, 3 flats; a minor half-diminished"
    assert in_words("two flats, B♭") == "two flats, B flat"
    assert in_words("V7(♭9,♯11)") == "V7(flat 9, sharp 11)"


# Numerals, numbers and symbols with the words a musician would say for them; common practice, no source.
SAID = [
    (numeral_in_words, "V65/V", "V 6 5 of V"),
    (numeral_in_words, "i64", "i 6 4"),
    (numeral_in_words, "iv6", "iv6"),
    (numeral_in_words, "V7", "V7"),
    (numeral_in_words, "V13", "V13"),
    (numeral_in_words, "II//I7", "II over I7"),
    (numeral_in_words, "IV/♭3", "IV over ♭3"),
    (numeral_in_words, "V7/V/ii", "V7 of V of ii"),
    (number_in_words, "1", "1"),
    (number_in_words, "57", "5 7"),
    (number_in_words, "2-7", "2 minor 7"),
    (number_in_words, "♭6maj7", "♭6 maj7"),
    (number_in_words, "7°7/2", "7°7 over 2"),
    (number_in_words, "2//17", "2 over 1 7"),
    (number_in_words, "5/7", "5 over 7"),
]


@pytest.mark.parametrize(("say", "written", "said"), SAID)
def test_numerals_and_numbers_are_said_as_a_musician_says_them(say, written, said):
    assert say(written) == said


@pytest.mark.parametrize(
    ("symbol", "said"),
    [("Em", "Em, E minor"), ("B7", "B7, B dominant seventh"), ("Cm7b5", "Cm7♭5, C half-diminished seventh"),
     ("Cm(maj7)", "Cm(maj7), C minor with major seventh"), ("C/E", "C over E, C major over E"),
     ("Fmaj7#11", "Fmaj7♯11, F major seventh add ♯11"), ("D//C7", "D over C7"), ("C5", "C5, C root and fifth"),
     ("C6/9", "C6/9, C major sixth add 9")],
)  # fmt: skip
def test_chords_are_said_by_symbol_and_in_words(symbol, said):
    assert chord_in_words(parse_chord(symbol), Conventions()) == said


def test_notes_keep_the_names_that_were_chosen():
    text = spoken("names german", "| Bm | F#7 |")

    assert "Right hand" in text and "H3" in text.replace("H4", "H3")
    assert without_codes(text) == text
