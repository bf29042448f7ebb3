"""Moving the shown key: ``to``, ``next``, ``back``, ``home``; and ``key``, which moves nothing."""

from __future__ import annotations

import pytest
from verbs.session_words import CHARTS, FALLING_BASS, after, answer_to, keys_of, numerals, symbols

from nearhand.notation.keys import write_key
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

# Key, chords of | Em | Bm/D | Am/C | B7 | in it: common practice, no source.
MOVED = [
    ("C minor", "Cm Gm/Bb Fm/Ab G7"),
    ("G minor", "Gm Dm/F Cm/Eb D7"),
    ("G# minor", "G#m D#m/F# C#m/E D#7"),
    ("Eb minor", "Ebm Bbm/Db Abm/Cb Bb7"),
    ("F# minor", "F#m C#m/E Bm/D C#7"),
    ("A minor", "Am Em/G Dm/F E7"),
]  # fmt: skip


def opened(path):
    return after(f"open {path}")


@pytest.mark.parametrize(("name", "chords"), MOVED)
def test_to_a_key_moves_the_chords_and_keeps_the_numerals(name, chords):
    session = after(FALLING_BASS, f"to {name}")

    assert str(session.shown_key) == name
    assert symbols(session) == chords
    assert numerals(session) == "i v6 iv6 V7"


@pytest.mark.parametrize("word", ["C", "c", "Cm", "c minor", "C Minor", "C aeolian", '"C minor"', "  C   minor "])
def test_a_bare_note_or_any_word_for_minor_keeps_a_minor_tune_in_minor(word):
    assert str(after(FALLING_BASS, f"to {word}").shown_key) == "C minor"


def test_to_several_keys_shows_them_all_and_stays_in_the_last():
    session = after(FALLING_BASS)

    outcome = respond(session, "to C minor,G minor, Bb")

    assert keys_of(outcome.answer) == ["C minor", "G minor", "Bb minor"]
    assert str(outcome.session.shown_key) == "Bb minor"


def test_to_all_shows_twelve_keys_by_falling_fifths_and_stays_where_it_was():
    session = after(FALLING_BASS, "to A minor")

    outcome = respond(session, "to all")

    # the circle of fifths, common practice, no source; G# minor for Ab minor because it has fewer accidentals
    assert " ".join(name.split()[0] for name in keys_of(outcome.answer)) == "E A D G C F Bb Eb G# C# F# B"
    assert outcome.session == session
    assert "rest between them" in outcome.answer.advice


def test_fewer_than_twelve_keys_come_without_advice():
    assert answer_to("to C, G", after(FALLING_BASS)).advice == ""


@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
def test_next_twelve_times_is_home_again(chart):
    start = opened(chart)
    session, seen = start, []
    for _ in range(12):
        session = respond(session, "next").session
        seen.append(session.shown_key.tonic.semitones)

    assert session.shown_key == start.shown_key
    assert symbols(session) == symbols(start)
    # each step is a fifth down, 7 semitones, and all twelve keys are passed (common practice, no source)
    assert seen == [(start.shown_key.tonic.semitones - 7 * step) % 12 for step in range(1, 13)]


@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
def test_next_passes_the_keys_that_to_all_shows(chart):
    start = opened(chart)
    session, names = start, [str(start.shown_key)]
    for _ in range(11):
        session = respond(session, "next").session
        names.append(str(session.shown_key))

    assert names == keys_of(respond(start, "to all").answer)


@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
def test_back_sounds_the_key_that_next_came_from(chart):
    session = opened(chart)
    for _ in range(12):
        there = respond(session, "next").session
        again = respond(there, "back").session
        assert again.shown_key.tonic.semitones == session.shown_key.tonic.semitones
        assert again.shown_key.mode == session.shown_key.mode
        session = there


@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
def test_back_twelve_times_is_home_again(chart):
    start = opened(chart)

    assert symbols(after(*["back"] * 12, start=start)) == symbols(start)


def test_a_tune_in_a_rare_spelling_comes_home_to_it():
    session = after("A# minor: i iv V")

    assert symbols(after(*["next"] * 12, start=session)) == "A#m D#m E#"
    assert str(after("next", "back", start=session).shown_key) == "A# minor"


def test_home_is_the_tunes_own_key():
    session = after(FALLING_BASS, "to C minor", "next", "home")

    assert symbols(session) == "Em Bm/D Am/C B7"


def test_naming_another_key_keeps_every_chord_and_changes_the_numerals():
    session = after(FALLING_BASS)

    named = after("key G major", start=session)

    assert symbols(named) == symbols(session)
    assert numerals(named) == "vi iii6 ii6 V7/vi"  # common practice, no source
    assert (session.tune.key_source, named.tune.key_source) == ("inferred", "given")
    assert named.tune.runner_up is None


@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
@pytest.mark.parametrize("name", ["C major", "F# minor", "Db lydian"])
def test_naming_a_key_keeps_the_chords_of_every_chart(chart, name):
    session = opened(chart)

    named = after(f"key {name}", start=session)

    assert symbols(named) == symbols(session)
    assert str(named.shown_key) == name
    assert symbols(after(f"key {session.tune.key}", start=named)) == symbols(session)
    assert after(f"key {session.tune.key}", start=named).tune.progression == session.tune.progression


def test_key_alone_ranks_the_keys():
    session = after(FALLING_BASS)

    assert answer_to("key", session) == answer_to("keys", session)
    assert str(answer_to("key", session).fits[0].key) == "E minor"
    assert len(answer_to("keys", session).fits) == 5


def test_keys_ranks_chords_that_are_not_kept_in_view_either():
    answer = answer_to('keys "| Am | Dm | E7 | Am |"', Session())

    assert str(answer.fits[0].key) == "A minor"  # V7 leads to i (common practice, no source)
    assert sum(fit.share for fit in answer.fits) <= 1


def test_the_option_key_names_the_key_of_chords_that_are_there_already():
    session = after(FALLING_BASS, 'show --key "G major"')

    assert symbols(session) == "Em Bm/D Am/C B7"
    assert numerals(session) == "vi iii6 ii6 V7/vi"


def test_numerals_are_read_in_the_shown_key_when_they_name_none():
    assert symbols(after("G minor: i V7", "to A minor", "i iv")) == "Am Dm"


def test_a_key_named_before_any_chords_holds_for_numerals():
    assert symbols(after("key E minor", "| i | V7 |")) == "Em B7"


def test_chord_symbols_find_their_own_key_whatever_key_is_shown():
    assert str(after("key E minor", "| Dm7 | G7 | Cmaj7 |").tune.key) == "C major"


@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
@pytest.mark.parametrize(("verb", "other", "step"), [("up", "down", 1), ("down", "up", -1)])
def test_semitones_pass_all_twelve_keys_and_come_home(chart, verb, other, step):
    start = opened(chart)
    session, seen = start, []
    for _ in range(12):
        there = respond(session, verb).session
        assert respond(there, other).session.shown_key.tonic.semitones == session.shown_key.tonic.semitones
        assert abs(there.shown_key.signature) <= 6 or there.shown_key == start.shown_key
        session = there
        seen.append(session.shown_key.tonic.semitones)

    assert seen == [(start.shown_key.tonic.semitones + step * count) % 12 for count in range(1, 13)]
    assert session.shown_key == start.shown_key
    assert symbols(session) == symbols(start)


# Key of the tune, moves, key reached: the name with fewest accidentals (common practice, no source).
SEMITONES = [
    ("C major", "up", "Db major"), ("C major", "down", "B major"), ("E minor", "up", "F minor"),
    ("E minor", "down", "Eb minor"), ("A minor", "down", "G# minor"), ("F major", "up", "Gb major"),
    ("G major", "down", "F# major"), ("B major", "up 2", "Db major"), ("D dorian", "up 11", "C# dorian"),
    ("Eb major", "down 7", "Ab major"), ("D minor", "up 6", "G# minor"),
]  # fmt: skip


@pytest.mark.parametrize(("own", "move", "reached"), SEMITONES)
def test_a_key_semitones_away_has_its_usual_name(own, move, reached):
    session = after(f"{own}: I V7", move)

    assert str(session.shown_key) == reached
    assert numerals(session) == numerals(after(f"{own}: I V7"))


# Key, its relative, its parallel: R. Hutchinson, Music Theory for the 21st-Century Classroom, "Relative and parallel
# keys" (from memory); modes have the major or minor key of their signature.
RELATED = [
    ("E minor", "G major", "E major"), ("C major", "A minor", "C minor"), ("Eb major", "C minor", "Eb minor"),
    ("F# minor", "A major", "F# major"), ("D dorian", "C major", "D major"), ("G mixolydian", "A minor", "G minor"),
]  # fmt: skip


@pytest.mark.parametrize(("own", "relative", "parallel"), RELATED)
def test_related_keys_read_the_same_chords(own, relative, parallel):
    session = after(f"{own}: I IV v")

    for verb, name in (("relative", relative), ("parallel", parallel)):
        read = after(verb, start=session)
        assert str(read.shown_key) == str(read.tune.key) == name
        assert symbols(read) == symbols(session)
        assert f"numerals are now read in {write_key(read.shown_key)}." in answer_to(verb, session).advice
        assert after("undo", start=read).shown_key == session.shown_key


@pytest.mark.parametrize("verb", ["relative", "parallel"])
def test_related_keys_go_there_and_back(verb):
    session = after(FALLING_BASS, "to C minor")

    assert symbols(after(verb, start=session)) == symbols(session) == "Cm Gm/Bb Fm/Ab G7"
    assert after(verb, verb, start=session).tune.progression == session.tune.progression
    assert after(verb, verb, start=session).shown_key == session.shown_key
    assert symbols(after(verb, "home", start=session)) == "Em Bm/D Am/C B7"


def test_the_relative_and_the_parallel_key_have_their_own_numerals():
    # common practice, no source
    assert numerals(after(FALLING_BASS, "relative")) == "vi iii6 ii6 V7/vi"
    assert numerals(after("| Am | F | C | G |", "key A minor", "relative")) == "vi IV I V"
    assert numerals(after("C: I vi IV V", "parallel")) == "I vi IV V"  # vi on the raised sixth degree of minor


def test_a_related_key_may_be_named_before_any_chords():
    assert symbols(after("key E minor", "relative", "| I | V7 |")) == "G D7"
    assert symbols(after("key E minor", "parallel", "| I | V7 |")) == "E B7"


def test_reading_in_a_related_key_keeps_the_loop():
    assert after(FALLING_BASS, "loop on", "relative").loop is True
