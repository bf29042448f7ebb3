"""What is saved comes back: every chart in several keys, and any bars that can be typed."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from verbs.session_words import CHARTS, FALLING_BASS, after, answer_to, keys_of, symbols

from nearhand.theory.progression import Bar, Meter
from nearhand.verbs.files import read_tune, write_tune
from nearhand.verbs.respond import respond
from nearhand.verbs.tune import Tune, tune_from_text

MOVES = ["home", "next", "back", "next next next next next", "back back back back back back"]


def facts(tune: Tune) -> dict[str, object]:
    """All that a chart file says."""
    bars = tune.progression.bars
    return {
        "title": tune.title,
        "key": tune.key,
        "tempo": tune.tempo_bpm,
        "notes": tune.notes,
        "sections": [(number, bar.section) for number, bar in enumerate(bars) if bar.section],
        "meters": [str(bar.meter) for bar in bars],
        "signs": [(bar.opens_repeat, bar.closes_repeat, bar.ends_section) for bar in bars],
        "beats": [[slot.beats for slot in bar.slots] for bar in bars],
        "chords": [[slot.chord for slot in bar.slots] for bar in bars],
    }


@pytest.mark.parametrize("moves", MOVES)
@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
def test_a_chart_comes_back_from_its_file_as_it_was_saved(chart, moves, desk):
    session = after(f"open {chart}", *moves.split())

    again = after("save there", "open there.toml", start=session)

    assert facts(again.tune) == facts(session.tune.in_key(session.shown_key))
    assert again.tune.progression == session.tune.progression.in_key(session.shown_key)
    assert again.tune.title and again.tune.tempo_bpm and again.tune.notes


def test_every_chart_has_what_the_round_trip_is_about():
    tunes = [read_tune(str(chart)) for chart in CHARTS]

    assert len(CHARTS) >= 14
    assert {str(bar.meter) for tune in tunes for bar in tune.progression.bars} >= {"3/4", "4/4"}
    assert any(bar.opens_repeat for tune in tunes for bar in tune.progression.bars)
    assert all(any(bar.section for bar in tune.progression.bars[1:]) for tune in tunes)


def test_a_chart_is_saved_in_the_key_it_is_shown_in(desk):
    answer = answer_to("save lament", after(FALLING_BASS, "to C minor"))

    assert answer.lines == ("Saved in C minor as lament.toml.",)
    assert (desk / "lament.toml").read_text(encoding="utf-8") == (
        'key = "C minor"\n\n[[sections]]\nchords = """\n| Cm | Gm/Bb | Fm/Ab | G7 |\n"""\n'
    )


def test_a_saved_chart_opens_in_its_own_key(desk):
    outcome = respond(after(FALLING_BASS, "to C minor", "save lament"), "open lament.toml")

    assert keys_of(outcome.answer) == ["C minor"]
    assert outcome.session.tune.key_source == "given"
    assert symbols(outcome.session) == "Cm Gm/Bb Fm/Ab G7"


def test_a_file_name_may_hold_blanks_and_need_not_end_in_its_suffix(desk):
    after(FALLING_BASS, "save two doors", 'save "three doors.toml"')

    assert sorted(path.name for path in desk.iterdir()) == ["three doors.toml", "two doors.toml"]
    assert symbols(after("open two doors.toml")) == symbols(after('open "three doors.toml"'))


def test_saving_changes_neither_the_session_nor_the_tune(desk):
    session = after(FALLING_BASS, "to C minor")

    assert respond(session, "save it").session == session


HEADS = ["[4/4]", "[3/4]", "[6/8]", "[5/4]", "[2/2]", ""]
CHORDS = ["C", "Dm7", "G7", "F/A", "Bb", "N.C.", "E7", "Am"]
bar_texts = st.tuples(
    st.sampled_from(HEADS), st.lists(st.tuples(st.sampled_from(CHORDS), st.integers(0, 3)), min_size=1, max_size=5)
).map(lambda bar: " ".join([bar[0], *(chord + " /" * beats for chord, beats in bar[1])]))
lines_of_bars = st.lists(
    st.tuples(bar_texts, st.sampled_from(["|", "|", "|", "||", ":|"])), min_size=1, max_size=9
).map(lambda bars: "C major: | " + " ".join(f"{bar} {sign}" for bar, sign in bars))


@given(lines_of_bars)
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_any_bars_that_can_be_typed_come_back_from_a_file(tmp_path, line):
    tune = tune_from_text(line)

    write_tune(str(tmp_path / "bars.toml"), tune, replace=True)

    assert facts(read_tune(str(tmp_path / "bars.toml"))) == facts(tune)


@pytest.mark.parametrize("line", ["| [3/4] C / D / |", "| C / F / G / |", "| [6/8] C / Dm / F / G / |"])
def test_equal_shares_that_are_no_whole_beats_come_back_from_a_file(line, desk):
    session = after(f"C: {line}", "save shares")

    assert facts(after("open shares.toml").tune)["beats"] == facts(session.tune)["beats"]


def test_a_double_bar_behind_a_repeat_comes_back_from_a_file(desk):
    session = after("C: |: C | F :| || G |", "save double")

    assert facts(after("open double.toml").tune)["signs"] == facts(session.tune)["signs"]


texts = st.text(st.characters(codec="utf-8"), max_size=30)


@given(title=texts, section=texts, notes=texts, tempo=st.none() | st.integers(10, 400))
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_any_words_come_back_from_a_file(tmp_path, title, section, notes, tempo):
    tune = tune_from_text("C: C F")._replace(title=title, notes=notes.strip(), tempo_bpm=tempo)
    first, second = tune.progression.bars
    tune = tune._replace(progression=tune.progression._replace(bars=(first._replace(section=section), second)))

    write_tune(str(tmp_path / "words.toml"), tune, replace=True)

    assert facts(read_tune(str(tmp_path / "words.toml"))) == facts(tune)


def test_a_flag_in_a_title_comes_back_from_a_file(desk):
    title = "Dawn \N{WAVING BLACK FLAG}\N{TAG LATIN SMALL LETTER G}\N{CANCEL TAG}"
    write_tune("flag.toml", tune_from_text("C: C F")._replace(title=title), replace=False)

    assert read_tune("flag.toml").title == title


def test_a_bar_of_many_meters_keeps_each():
    bars = tune_from_text("C: | C | [3/4] F | [7/8] G | C |").progression.bars

    assert [bar.meter for bar in bars] == [Meter(4, 4), Meter(3, 4), Meter(7, 8), Meter(7, 8)]
    assert all(isinstance(bar, Bar) for bar in bars)
