"""The demo charts: each resolves in its key and in all twelve, and every chord comes back from its symbol."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.chart_bars import parse_meter
from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.conventions import PLAIN, Conventions
from nearhand.notation.keys import parse_key
from nearhand.notation.numbers import parse_number, write_number
from nearhand.notation.numeral_writing import write_numeral
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.chord import relative_to
from nearhand.theory.key import circle
from nearhand.verbs.files import read_tune

FOLDER = Path(__file__).parents[2] / "progressions"
FILES = sorted(FOLDER.glob("*.toml"))
CHARTS = {path.stem: tomllib.loads(path.read_text(encoding="utf-8")) for path in FILES}


def progressions(name):
    """The sections of a demo chart, resolved in its own key and meter."""
    chart = CHARTS[name]
    for section in chart["sections"]:
        meter = parse_meter(section.get("meter", chart["meter"]))
        yield resolve(read_chart(section["chords"], meter), parse_key(chart["key"]))


def test_there_are_demo_charts_in_major_in_minor_and_in_a_church_mode():
    modes = {parse_key(chart["key"]).mode.name for chart in CHARTS.values()}

    assert len(CHARTS) >= 14
    assert {"major", "minor", "dorian"} <= modes


@pytest.mark.parametrize("name", CHARTS)
def test_every_section_has_bars_whose_chords_fill_the_meter(name):
    for progression in progressions(name):
        assert progression.bars
        for bar in progression.bars:
            assert sum(slot.beats for slot in bar.slots) == bar.meter.beats


@pytest.mark.parametrize("name", CHARTS)
def test_every_chord_comes_back_from_its_symbol_in_all_twelve_keys(name):
    for progression in progressions(name):
        for home in circle(progression.key):
            for chord in progression.in_key(home).chords():
                for choice in (Conventions(), PLAIN):
                    assert parse_chord(write_chord(chord, choice)) == chord


@pytest.mark.parametrize("name", CHARTS)
def test_no_chord_tone_needs_more_than_a_double_accidental_in_any_of_the_twelve_keys(name):
    for progression in progressions(name):
        for home in circle(progression.key):
            for chord in progression.in_key(home).chords():
                assert all(abs(tone.alteration) <= 2 for tone in (*chord.tones, chord.bass))


@pytest.mark.parametrize("name", CHARTS)
def test_a_chart_moved_round_the_circle_comes_home_unchanged(name):
    for progression in progressions(name):
        for home in circle(progression.key):
            moved = progression.in_key(home)

            assert tuple(relative_to(chord, home) for chord in moved.chords()) == progression.relative_chords
            assert moved.in_key(progression.key) == progression


@pytest.mark.parametrize("name", CHARTS)
def test_every_chord_comes_back_from_its_numeral_and_its_number(name):
    for progression in progressions(name):
        for chord in progression.relative_chords:
            for degrees in ("mode", "major"):
                for plain in (False, True):
                    mode, choice = progression.key.mode, Conventions(degrees, plain)

                    assert parse_numeral(write_numeral(chord, mode, choice), mode, choice) == chord
                    assert parse_number(write_number(chord, mode, choice), mode, choice) == chord


# What the notes of a chart say its chords are in another key: title, key, section, symbols of some bars.
# Computed by hand.
IN_ANOTHER_KEY = [
    ("three-trams-to-the-harbour", "A", 1, "G#m7b5 C#7b9"),
    ("linen-on-the-line", "C", 2, "F(add9) Fm6 C(add9)"),
    ("cold-window-at-vespers", "E minor", 0, "F/A Em/B B7"),
    ("dominoes-on-the-sill", "Ab", 2, "Ab C7 F7 Bb7 Eb7 Ab"),
    ("the-borrowed-umbrella", "F", 0, "Bbm/Db F/C C7 Dm Eb Bb"),
    ("waltz-for-a-crooked-table", "Eb", 0, "Ab F7/A Eb/Bb"),
    ("twelve-buckets-of-coal", "Db", 0, "Db7 Gb7 Db7"),
    ("the-lamplighter-goes-round", "C minor", 0, "Cm Fm Bb Eb Ab Ddim G Cm"),
    ("the-lamplighter-goes-round", "G# minor", 0, "G#m C#m F# B E A#dim D# G#m"),
    ("seven-two-ways", "F# minor", 1, "B/D# C#/E# F#m C#m/E Bm/D"),
    ("allotment-number-eight", "Eb", 1, "Ab Eb/G Fm7 Bb/D Eb Db Ab/C Bb7"),
]


@pytest.mark.parametrize(("name", "other", "section", "symbols"), IN_ANOTHER_KEY)
def test_the_notes_of_a_chart_are_right_about_another_key(name, other, section, symbols):
    moved = list(progressions(name))[section].in_key(parse_key(other))
    written = " ".join(write_chord(chord, PLAIN) for chord in moved.chords())

    assert symbols in written


def sung(name):
    """The places of a demo chart's melody above its tonic, and the tune."""
    tune = read_tune(str(FOLDER / f"{name}.toml"))
    return tune, {note.interval.fifths for note in tune.melody.sounding()}


def test_three_charts_have_melodies_one_of_five_notes_one_with_both_sevenths_one_beyond_the_scale():
    # common practice, no source: the major pentatonic is five fifths in a row; minor has a low and a raised seventh
    (_, five), (minor, both), (beyond, altered) = map(
        sung, ("pebbles-in-a-tin", "the-clockmakers-candle", "tangerine-ferry")
    )

    assert five == {0, 1, 2, 3, 4}
    assert minor.key.mode.name == "minor"
    assert {-2, 5, -4, 3} <= both
    assert altered - set(beyond.key.mode.degrees) == {-2, -3, -4, 7, 6}


@pytest.mark.parametrize("name", [name for name, chart in CHARTS.items() if "melody" in chart["sections"][0]])
def test_a_melody_has_the_bars_of_its_chords_and_the_same_degrees_in_every_key(name):
    tune, _ = sung(name)
    full = tune.melody.bars[tune.melody.has_pickup :]

    assert [bar.meter for bar in full] == [bar.meter for bar in tune.progression.bars]
    assert all(bar.beats == bar.meter.beats for bar in full)
    for home in circle(tune.key):
        moved = tune.in_key(home).melody
        assert [note.interval for note in moved.sounding()] == [note.interval for note in tune.melody.sounding()]
        assert {note.pitch.pitch_class for note in moved.sounding()} == {
            home.tonic.up(note.interval.fifths) for note in tune.melody.sounding()
        }
