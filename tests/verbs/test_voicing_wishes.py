"""What is asked of the voicings: a verb and an option for each wish, how long it holds, and the way back."""

from __future__ import annotations

from itertools import pairwise

import pytest
from verbs.session_words import after, answer_to, keys_of, picture, refusal

import nearhand
from nearhand.render.answers import draw
from nearhand.render.page import Page, text_of
from nearhand.verbs.answers import NoteAnswer
from nearhand.verbs.respond import respond
from nearhand.voicing.wishes import DEFAULT_WISHES, NO_VOICING, STYLES, Wishes

CADENCE = "| Dm7 | G7 | Cmaj7 |"
WALK = "C: | C | Am | F | G7 | C |"
KEYS = [
    (1, "Db"), (2, "D"), (3, "Eb"), (4, "E"), (5, "F"), (6, "F#"), (7, "G"), (8, "Ab"), (9, "A"), (10, "Bb"), (11, "B"),
]  # fmt: skip
"""Semitones above C, and the key."""
NO_TUNE = ("there is no progression yet", "", 'write chords, for example "| Em | Bm/D | Am/C | B7 |", or open a chart')


def voiced(line, session):
    """The voicing of the one view that a line is answered with."""
    (view,) = answer_to(line, session).views
    return view.voiced


def hands(found):
    """The notes of the left and the right hand, chord by chord."""
    return [tuple(" ".join(map(str, hand)) for hand in (each.left, each.right)) for each in found.voicings]


def rights(found):
    return [right for _, right in hands(found)]


def numbers(found):
    """All notes, chord by chord, as MIDI numbers."""
    return [[pitch.midi for pitch in pitches] for pitches in found.pitches]


def tops(found):
    return [row[-1] for row in numbers(found)]


def uppers(found):
    return [pitch.midi for each in found.voicings for pitch in each.upper]


def widest(found):
    """Semitones from the lowest to the highest note of the hand that reaches furthest."""
    return max(hand[-1].midi - hand[0].midi for each in found.voicings for hand in (each.left, each.right) if hand)


def facts(session):
    """All a session holds but its links for undo."""
    return session[:5]


@pytest.mark.parametrize("style", STYLES)
def test_voice_takes_any_family(style):
    outcome = respond(after(CADENCE), f"voice {style}")
    found = voiced("show", outcome.session)

    assert (outcome.session.voicing, found.style) == (style, style)
    assert found.pitches == nearhand.voice(nearhand.parse_progression(CADENCE), style).pitches
    assert outcome.answer.views[0].voiced == found


def test_every_family_has_its_own_way_to_voice_a_row_of_sevenths():
    # as docs/voicing.md prints it
    found = {style: voiced("show", after(f"{CADENCE} A7 |", f"voice {style}")).pitches for style in STYLES}

    assert len(set(found.values())) == len(STYLES)


def test_voice_none_keeps_the_other_wishes_for_later():
    session = after(CADENCE, "left octave", "voice none")

    assert answer_to("show", session).views[0].voiced is None
    assert after("voice close", start=session).wishes == Wishes(left="octave")


@pytest.mark.parametrize("style", [*STYLES[1:], NO_VOICING])
def test_another_family_forgets_pins_and_the_path_and_nothing_else(style):
    session = after(CADENCE, "left root", "span 15", "register B2 C6", "top still", "weigh leap 2, bass 1")
    pinned, on_the_second = after("pin 2", start=session), after("others 2", start=session)

    assert (len(pinned.wishes.pins), on_the_second.wishes.path) == (1, 2)
    for before in (pinned, on_the_second):
        assert after(f"voice {style}", start=before).wishes == session.wishes._replace(style=style)


def test_another_family_keeps_given_top_notes_as_far_as_it_carries_them():
    session = after(CADENCE, "top A4 - -")

    assert tops(voiced("voice drop2", session))[0] == 69
    assert after("voice drop2", start=session).wishes == session.wishes._replace(style="drop2")
    assert refusal("voice guide-tones", session).what == "no guide-tones voicing of chord 1 (Dm7) has A4 on top"


# The left hand's lowest note and all its notes in semitones above it, on C and on C/E: common practice, no source.
PATTERNS = [
    ("bass", ("C", 0), ("E", 0)),
    ("root", ("C", 0), ("C", 0)),
    ("octave", ("C", 0, 12), ("E", 0, 12)),
    ("fifth", ("C", 0, 7, 12), ("E", 0, 12)),
    ("tenth", ("C", 0, 16), ("E", 0, 12)),
    ("none", (), ()),
]  # fmt: skip


@pytest.mark.parametrize(("pattern", "on_c", "over_e"), PATTERNS)
def test_left_gives_the_left_hand_a_pattern(pattern, on_c, over_e):
    found = voiced(f"left {pattern}", after("C: | C | C/E |", "span tenth"))
    seen = [
        (str(each.left[0].pitch_class), *(pitch.midi - each.left[0].midi for pitch in each.left)) if each.left else ()
        for each in found.voicings
    ]

    assert seen == [on_c, over_e]
    assert [len(each.right) for each in found.voicings] == [3, 3]


# Intervals in semitones, the sixth, the seventh, the ninth and the tenth major ones (common practice, no source).
SPANS = [
    ("fifth", 7), ("sixth", 9), ("seventh", 11), ("octave", 12), ("ninth", 14), ("tenth", 16), ("eleventh", 17),
    ("7", 7), ("13", 13), ("19", 19),
]  # fmt: skip


@pytest.mark.parametrize(("word", "semitones"), SPANS)
def test_a_span_is_an_interval_or_a_number_of_semitones(word, semitones):
    assert after(f"span {word}").wishes.span == semitones
    assert after(f"span  {word} ").wishes.span == semitones


@pytest.mark.parametrize("semitones", range(8, 17))
@pytest.mark.parametrize("style", ["close", "any", "two-hand", "four-part"])
def test_no_hand_reaches_further_than_it_spans(style, semitones):
    session = after("C: | Dm7 | G7 | C6 |", "voice close", f"span {semitones}")

    assert widest(voiced(f"voice {style}", session)) <= semitones


def test_a_smaller_hand_gets_another_voicing():
    # drop 2 and 4 puts an octave D3 A3 D4 into the left hand; for less than an octave another inversion is left
    session = after("C: | Dm7 | G7 | C6 |", "voice drop2and4")

    assert hands(voiced("show", session))[0] == ("D3 A3 D4", "C5 F5")
    assert hands(voiced("span 11", session))[0] == ("D3 F3 C4", "A4 D5")


@pytest.mark.parametrize("line", ["left octave", "left tenth", "span octave", *(f"voice {style}" for style in STYLES)])
def test_a_hand_that_stretches_further_than_a_ninth_gets_advice(line):
    answer = answer_to(line, after("C: | C | F |", "span tenth"))

    assert ("stop when it hurts" in answer.advice) == (widest(answer.views[0].voiced) > 14)
    assert ("a teacher or a clinician" in answer.advice) == (widest(answer.views[0].voiced) > 14)
    assert line != "left tenth" or answer.advice


def test_pins_that_go_with_their_family_are_told_and_take_no_advice_away():
    gone = "The pins are let go: they were voicings of another family. undo brings them back."
    wide = after("C: | C | F |", "span tenth", "left tenth")

    assert answer_to("voice open", after(CADENCE, "pin 2")).advice == gone
    assert answer_to("voice open", after(CADENCE)).advice == ""
    advice = answer_to("voice guide-tones", after("pin 1", start=wide)).advice
    assert gone in advice
    assert answer_to("voice guide-tones", wide).advice in advice


def test_the_same_family_named_again_keeps_its_pins():
    session = after(CADENCE, "pin 2 F4 G4 B4 D5")

    assert after("voice close", start=session).wishes == session.wishes


# C4 is MIDI 60 (MIDI 1.0; scientific pitch notation), B#3 the same key, E#5 that of F5.
REGISTERS = [("register C4 C5", 60, 72), ("register Bb3  F#5", 58, 78), ("register B#3,E#5", 60, 77)]


@pytest.mark.parametrize(("line", "low", "high"), REGISTERS)
def test_a_register_bounds_the_upper_notes(line, low, high):
    session = after(CADENCE, line)
    found = uppers(voiced("show", session))

    assert (session.wishes.low, session.wishes.high) == (low, high)
    assert min(found) >= low
    assert max(found) <= high


def test_a_register_moves_the_hand_and_off_brings_it_back():
    session = after(CADENCE)
    high = after("register G4 E6", start=session)

    assert min(uppers(voiced("show", high))) >= 67 > min(uppers(voiced("show", session)))
    assert facts(after("register off", start=high)) == facts(session)


@pytest.mark.parametrize(
    "lines",
    [("register moves", "register off"), ("register C4 C6", "register off"), ("left tenth", "left off"),
     ("span octave", "span off"), ("top rising", "top off"), ("weigh leap 2, hidden 3", "weigh off")],
)  # fmt: skip
def test_off_switches_a_wish_off(lines):
    assert after(*lines[:1]).wishes != DEFAULT_WISHES
    assert after(*lines).wishes == DEFAULT_WISHES


@pytest.mark.parametrize("style", ["close", "drop2", "guide-tones"])
@pytest.mark.parametrize(("up", "key"), KEYS)
def test_a_register_that_moves_has_the_same_positions_in_every_key(up, key, style):
    # the nearer way, up or down (common practice, no source)
    session = after(CADENCE, f"voice {style}", "register moves")
    shift = up if up <= 6 else up - 12
    at_home, moved = (numbers(voiced(line, session)) for line in ("show", f"to {key}"))

    assert moved == [[note + shift for note in chord] for chord in at_home]


def test_a_register_that_stays_keeps_every_key_near_the_hand():
    asked = (CADENCE, "register C4 D5")
    session = after(*asked, "register moves", "register stays")

    assert session.wishes == after(*asked).wishes
    for view in answer_to("to all", session).views:
        assert min(uppers(view.voiced)) >= 60
        assert max(uppers(view.voiced)) <= 74


def test_a_register_is_given_in_the_key_that_is_shown():
    # like pins and top notes: who sees Eb and writes G3 G4 means these notes; in C they lie 3 semitones lower
    session = after("C: | C | F | C |", "register moves", "to Eb", "register G3 G4")
    here, at_home = uppers(voiced("show", session)), uppers(voiced("home", session))

    assert min(here) >= 55
    assert max(here) <= 67
    assert at_home == [note - 3 for note in here]


def test_a_page_names_the_register_in_its_own_signs():
    def told(*lines):
        answer = answer_to("register Eb4 Eb5", after(*lines, "Eb: | Eb | Ab |"))
        return text_of(draw(answer, Page(80, answer.conventions.plain)))

    assert "Asked for: upper notes from E♭4 to E♭5." in told()
    assert "Asked for: upper notes from Eb4 to Eb5." in told("plain on")


@pytest.mark.parametrize("line", ["register C4 F4", "pin 1 C4 E4 G4", "top C5", "top E5 C5"])
def test_a_refused_wish_is_told_in_characters_that_every_screen_has(line):
    assert str(refusal(line, after("Eb: | Eb | Ab |"))).isascii()


@pytest.mark.parametrize("line", ["| C6 | Am7 |", "| Cmaj7 | Fmaj7 |", "| C | Am |"])
@pytest.mark.parametrize("style", STYLES)
def test_a_top_line_falls_rises_or_stays(style, line):
    session = after(line, f"voice {style}")
    falling, rising, still, free = (
        [after_it - before for before, after_it in pairwise(tops(voiced(f"top {word}", session)))]
        for word in ("falling", "rising", "still", "free")
    )

    assert max(falling) <= 0 <= min(rising)
    assert sum(map(abs, still)) <= sum(map(abs, free))


def test_a_top_line_is_a_word_or_notes_and_the_last_one_holds():
    melody = after(CADENCE, "top falling", "top A4 - G4").wishes

    assert (melody.top, melody.melody) == ("free", (69, None, 67))
    assert after(CADENCE, "top A4 - G4", "top rising").wishes == Wishes(top="rising")
    for line in ("top falling", "top A4 - G4"):
        assert facts(after(CADENCE, line, "top free")) == facts(after(CADENCE))


@pytest.mark.parametrize("style", STYLES)
def test_given_top_notes_are_on_top(style):
    # the top line of another path is asked for, the middle note left free
    session = after(CADENCE, f"voice {style}")
    paths = [path.voiced for path in answer_to("others --count 50", session).paths]
    asked = next(path for path in paths if tops(path)[0] != tops(paths[0])[0])
    first, _, last = (str(pitches[-1]) for pitches in asked.pitches)
    found = voiced(f"top {first} - {last}", session)

    assert (tops(found)[0], tops(found)[2]) == (tops(asked)[0], tops(asked)[2])
    assert tops(found) != tops(paths[0])
    assert sum(found.costs) <= sum(asked.costs)


@pytest.mark.parametrize(("up", "key"), KEYS)
def test_top_notes_given_in_another_key_are_there_and_at_home_in_their_own(up, key):
    # the shown notes of a path that is not the best; home is the nearer way, or an octave from there where the hand
    # does not reach
    there = after(WALK, f"to {key}")
    other = voiced("others 3", there)
    given = after(f"top {' '.join(str(pitches[-1]) for pitches in other.pitches)}", start=there)
    at_home = tops(voiced("home", given))

    assert tops(voiced("show", given)) == tops(other)
    assert {(note - top - up) % 12 for note, top in zip(tops(other), at_home, strict=True)} == {0}
    assert len({note - top for note, top in zip(tops(other), at_home, strict=True)}) == 1
    assert tops(voiced(f"to {key}", after("home", start=given))) == tops(other)


@pytest.mark.parametrize("line", ["top D5 - - - -", "pin 1 G4 B4 D5"])
def test_a_wish_given_in_another_key_never_bars_the_way_home_or_to_any_key(line):
    # D5 over G is G5 over C, a third above the right hand's highest note, or G4
    session = after(WALK, "to G", line)

    assert tops(voiced("home", session))[0] == 67
    assert len(answer_to("to all", session).views) == 12


def test_a_path_that_another_key_has_not_never_bars_the_way_there():
    # between C4 and C5 a C and an F lie in two ways each, an F# and a B in one
    session = after("C: | C | F |", "register C4 C5", "others 4")

    assert keys_of(answer_to("to F#", session)) == ["F# major"]
    assert len(answer_to("to all", session).views) == 12


def test_a_chord_is_pinned_as_it_is_shown():
    session = after(CADENCE, "others 3")
    shown = voiced("show", session)
    pinned = after("pin 2", start=session)

    assert shown.pitches != voiced("show", after(CADENCE)).pitches
    assert pinned.wishes == Wishes(pins=((1, tuple(pitch.midi for pitch in shown.pitches[1])),))
    assert voiced("show", pinned).pitches[1] == shown.pitches[1]


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("key", ["C", "F#", "Ab", "D"])
def test_a_pinned_chord_stays_as_it_is_in_every_family_and_key(key, style):
    for chart in ("C: | C | F |", "C: | Dm7 | G7 |"):
        session = after(chart, f"voice {style}", f"to {key}")
        shown = hands(voiced("show", session))
        for number in (1, 2):
            pinned = hands(voiced(f"pin {number}", session))
            assert pinned[number - 1] == shown[number - 1]


@pytest.mark.parametrize(
    ("style", "chart", "wish"),
    [
        ("drop2", "| G7 | F |", "top falling"),
        ("drop2", "| G7 | F |", "weigh bass 1"),
        ("drop3", "| F | C | Am |", "loop on"),
        ("open", "| Am | Fm6 | Fm6 |", "top falling"),
        ("any", "| Bb | F | C/E |", "top falling"),
        ("close", CADENCE, "top rising"),
        ("close", CADENCE, "weigh bass 5"),
        ("four-part", CADENCE, "weigh leap 9"),
    ],
)
def test_a_pinned_chord_keeps_all_its_notes_and_no_other_under_any_wish(style, chart, wish):
    session = after(f"C: {chart}", f"voice {style}", "pin 1")

    assert hands(voiced(wish, session))[0] == hands(voiced("show", session))[0]


def test_pinned_notes_are_the_upper_ones_or_all_of_them():
    session = after(CADENCE)

    assert hands(voiced("pin 2 F4 G4 B4 D5", session))[1] == ("G2", "F4 G4 B4 D5")
    assert hands(voiced("pin 1 D3 C4 D4 F4 A4", session))[0] == ("D3", "C4 D4 F4 A4")
    assert hands(voiced("pin 1 A4 F4, D4 C4", session))[0] == ("D2", "C4 D4 F4 A4")  # in any order


def test_a_pin_pulls_its_neighbours_along():
    # F4 A4 C5 D5 to F4 G4 B4 D5 to E4 G4 B4 C5: 0 + 2 + 1 + 0 and 1 + 0 + 0 + 2 semitones, counted by hand
    found = voiced("pin 2 F4 G4 B4 D5", after(CADENCE))

    assert rights(found) == ["F4 A4 C5 D5", "F4 G4 B4 D5", "E4 G4 B4 C5"]
    assert found.movement == 6


def test_several_chords_are_pinned_and_let_go_one_by_one_or_together():
    session = after(CADENCE, "pin 1 F4 A4 C5 D5; 3 G3 B3 C4 E4")
    one = after("pin 1 off", start=session)

    assert [rights(voiced("show", session))[place] for place in (0, 2)] == ["F4 A4 C5 D5", "G3 B3 C4 E4"]
    assert [place for place, _ in one.wishes.pins] == [2]
    assert rights(voiced("show", one))[2] == "G3 B3 C4 E4"
    for line in ("pin off", "pin 3 off"):
        assert facts(after(line, start=one)) == facts(after(CADENCE))
    assert after("pin 2 off", start=session).wishes == session.wishes


def test_a_new_pin_takes_the_place_of_the_old_one_of_its_chord_alone():
    session = after(CADENCE, "pin 1 F4 A4 C5 D5; 3 G3 B3 C4 E4", "pin 3 C4 E4 G4 B4")

    assert [rights(voiced("show", session))[place] for place in (0, 2)] == ["F4 A4 C5 D5", "C4 E4 G4 B4"]
    assert len(after("pin 1", "pin 3", start=session).wishes.pins) == 2


@pytest.mark.parametrize(("up", "key"), KEYS)
def test_a_pin_given_in_another_key_is_the_same_chord_at_home(up, key):
    there = after(WALK, f"to {key}")
    other = voiced("others 3", there)
    given = after(f"pin 1 {' '.join(map(str, other.voicings[0].right))}", start=there)
    here, at_home = (voiced(line, given).voicings[0].right for line in ("show", "home"))

    assert here == other.voicings[0].right
    assert len({after_it.midi - before.midi for before, after_it in zip(at_home, here, strict=True)}) == 1
    assert (here[0].midi - at_home[0].midi - up) % 12 == 0


def test_without_a_voicing_there_is_nothing_to_pin():
    session = after(CADENCE, "voice none")

    assert picture(refusal("pin 2", session)) == (
        "nothing is voiced that could be pinned", "^pin 2", "write voice close first",
    )  # fmt: skip
    assert rights(voiced("voice close", after("voice none", CADENCE))) == rights(voiced("show", after(CADENCE)))


def test_weights_are_added_up_until_they_are_switched_off():
    session = after(CADENCE, "weigh leap 3, bass 1", "weigh  bass  2", "weigh hidden 0")

    assert session.wishes.weights == (("leap", 3), ("bass", 2), ("hidden", 0))
    assert facts(after("weigh off", start=session)) == facts(after(CADENCE))
    assert after("weigh leap 999999").wishes.weights == (("leap", 100000),)


def test_what_parallels_weigh_decides_whether_there_are_any():
    # C E G to B D G over C to G: nothing parallel; G D to A E and C G: fifths (common practice, no source)
    session = after("C: | C | G | Am | F |")
    free, asked = voiced("show", session), voiced("weigh parallels 5", session)

    assert fifths_and_octaves(free) > 0 == fifths_and_octaves(asked) == asked.costs.parallels
    assert asked.movement > free.movement
    assert voiced("weigh parallels 0", session).pitches == free.pitches


def fifths_and_octaves(found):
    """Pairs of voices that move from a fifth or an octave to the same, counted plainly."""
    count = 0
    for before, after_it in pairwise(numbers(found)):
        voices = list(zip(before, after_it, strict=True))
        for place, (low, new_low) in enumerate(voices):
            for high, new_high in voices[place + 1 :]:
                size = (high - low) % 12
                count += size in (0, 7) and (new_high - new_low) % 12 == size and low != new_low and high != new_high
    return count


# A verb of the shell, the option that asks for the same, and a progression.
ONE_ANSWER = [
    ("voice drop2", "--voicing drop2", CADENCE),
    ("voice four-part", "--voicing=four-part", CADENCE),
    ("loop on", "--loop", CADENCE),
    ("left fifth", "--left fifth", WALK),
    ("span tenth", "--span tenth", CADENCE),
    ("span 10", "--span 10", CADENCE),
    ("register E4 A5", '--register "E4 A5"', CADENCE),
    ("register moves", "--register moves", CADENCE),
    ("top rising", "--top rising", CADENCE),
    ("top A4 - G4", '--top "A4 - G4"', CADENCE),
    ("pin 2 F4 G4 B4 D5", '--pin "2 F4 G4 B4 D5"', CADENCE),
    ("pin 1 F4 A4 C5 D5; 3 G3 B3 C4 E4", '--pin "1 F4 A4 C5 D5; 3 G3 B3 C4 E4"', CADENCE),
    ("pin 1 F4 A4 C5 D5", '--first "F4 A4 C5 D5"', CADENCE),
    ("pin 3 G3 B3 C4 E4", '--last "G3 B3 C4 E4"', CADENCE),
    ("weigh leap 3, bass 1", '--weights "leap 3, bass 1"', CADENCE),
    ("others 3", "--path 3", CADENCE),
]  # fmt: skip


@pytest.mark.parametrize(("verb", "option", "chart"), ONE_ANSWER)
def test_an_option_asks_for_one_answer_what_a_verb_asks_for_good(verb, option, chart):
    session = after(chart)
    asked, outcome = respond(session, verb), respond(session, f"show {option}")

    assert outcome.answer.views == asked.answer.views
    assert outcome.session == session != asked.session
    for line in ("lines", "why 2", "explain", "cadences"):
        assert answer_to(f"{line} {option}", session) == answer_to(line, asked.session)
    alone = respond(after(), f'show "{chart}" {option}')
    assert alone.answer.views == asked.answer.views
    assert facts(alone.session) == facts(session)


def test_options_may_stand_together_and_leave_nothing_behind():
    asked = ("voice drop2", "span octave", "left octave", "register C3 G5", "top falling", "weigh leap 2", "loop off")
    line = f'show "{CADENCE}" --voicing drop2 --span octave --left octave --register "C3 G5" --top falling'
    outcome = respond(after(), f'{line} --weights "leap 2"')

    assert outcome.answer.views[0].voiced.pitches == voiced("show", after(*asked, CADENCE)).pitches
    assert facts(outcome.session) == facts(after(CADENCE))


def test_the_first_and_the_last_chord_may_be_fixed_together():
    found = voiced(f'show "{CADENCE}" --first "F4 A4 C5 D5" --last "G3 B3 C4 E4" --pin "2 B3 D4 F4 G4"', None)

    assert rights(found) == ["F4 A4 C5 D5", "B3 D4 F4 G4", "G3 B3 C4 E4"]
    assert rights(voiced('show "| C |" --key C --first "E4 G4 C5" --last "E4 G4 C5"', None)) == ["E4 G4 C5"]


@pytest.mark.parametrize("style", ["drop2", "four-part", NO_VOICING])
@pytest.mark.parametrize("before", ["pin 1", "others 3"])
def test_another_family_for_one_answer_forgets_pins_and_path_as_the_verb_does(before, style):
    session = after(CADENCE, before)

    assert answer_to(f"show --voicing {style}", session).views == answer_to(f"voice {style}", session).views
    assert respond(session, f"show --voicing {style}").session == session


def test_a_pin_for_one_answer_takes_the_place_of_the_one_that_is_there():
    session = after(CADENCE, "pin 1 F4 A4 C5 D5")

    for option in ('--pin "1 C4 D4 F4 A4"', '--first "C4 D4 F4 A4"'):
        assert rights(voiced(f"show {option}", session))[0] == "C4 D4 F4 A4"
    assert rights(voiced("show", session))[0] == "F4 A4 C5 D5"


CHANGES = [
    *(f"voice {style}" for style in STYLES[1:]), "voice none", "left fifth", "span octave", "register E4 A5",
    "register moves", "top falling", "top A4 - G4", "pin 2", "pin 2 F4 G4 B4 D5", "pin 1",
    "pin 1 F4 A4 C5 D5; 3 G3 B3 C4 E4", "weigh leap 3, bass 1", "others 2", "others next",
]  # fmt: skip


@pytest.mark.parametrize("line", CHANGES)
def test_undo_takes_a_wish_back_and_redo_asks_for_it_again(line):
    session = after(CADENCE)
    changed = after(line, start=session)

    assert facts(changed) != facts(session)
    assert facts(after("undo", start=changed)) == facts(session)
    assert facts(after("undo", "redo", start=changed)) == facts(changed)
    assert answer_to("undo", changed).views == answer_to("show", session).views
    assert answer_to("redo", after("undo", start=changed)).views == answer_to("show", changed).views


WITHDRAWN = ["pin off", "pin 2 off", "weigh off", "register off", "register stays", "top free"]


@pytest.mark.parametrize("line", WITHDRAWN)
def test_what_is_withdrawn_comes_back_with_undo(line):
    asked = ("left octave", "register E3 C6", "register moves", "top C5 - -", "weigh leap 2", "pin 2")
    session = after(CADENCE, *asked)

    assert after(line, start=session).wishes != session.wishes
    assert after(line, "undo", start=session).wishes == session.wishes


@pytest.mark.parametrize(
    "line",
    ["voice drop2", "voice four-part", "left fifth", "span octave", "register C3 G5", "register moves", "top falling",
     "weigh leap 3, hidden 2"],
)  # fmt: skip
def test_a_wish_without_a_tune_is_kept_for_the_next_one(line):
    outcome = respond(after(), line)
    session = after(CADENCE, start=outcome.session)

    assert outcome.answer == NoteAnswer(("Kept for the next progression.",))
    assert session.wishes == outcome.session.wishes != DEFAULT_WISHES
    assert voiced("show", session).pitches == voiced(line, after(CADENCE)).pitches


@pytest.mark.parametrize("line", ["top E5 D5 - C5", "pin 2", "pin 2 C4 E4 G4", "others 2", "others", "why 2", "lines"])
def test_notes_and_paths_need_a_tune(line):
    assert picture(refusal(line)) == NO_TUNE


@pytest.mark.parametrize("new", ["| C | F |", 'show "| C | F |"', "open chart.toml", "lines | C | F |"])
def test_another_progression_forgets_pins_top_notes_and_path_and_nothing_else(new, desk):
    after("| C | F |", "save chart")
    general = Wishes("drop2", "octave", 13, 48, 84, moves=True, weights=(("leap", 2),))
    asked = ("voice drop2", "left octave", "span 13", "register C3 C6", "register moves", "weigh leap 2", CADENCE)
    for own in (("top D5 - -", "pin 2"), ("pin 2", "others 2")):
        session = after(*asked, *own)

        assert session.wishes != general
        assert after(new, start=session).wishes == general
        assert after(new, "undo", start=session).wishes == session.wishes


def test_a_word_for_the_top_line_outlives_its_tune():
    assert after(CADENCE, "top rising", "| C | F |").wishes == Wishes(top="rising")


def test_a_wish_begins_again_with_the_best_path():
    session = after(CADENCE, "others 3")

    for line in ("left octave", "span 12", "register E3 C6", "top falling", "pin 2", "weigh leap 2"):
        assert after(line, start=session).wishes.path == 1
    assert after("loop on", "plain on", start=session).wishes.path == 3
