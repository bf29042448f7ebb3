"""``others``, ``why`` and ``lines``: the next best paths, the reasons for a voicing, and each voice by itself."""

from __future__ import annotations

from itertools import pairwise, permutations

import pytest
from verbs.session_words import CHARTS, after, answer_to, picture, refusal

import nearhand
from nearhand.render.answers import draw
from nearhand.render.page import Page, text_of
from nearhand.verbs.others import OthersAnswer
from nearhand.verbs.respond import respond
from nearhand.verbs.why import decided_by
from nearhand.voicing.wishes import STYLES

CADENCE = "| Dm7 | G7 | Cmaj7 |"
TURN = "C: | Cmaj7 | A7 | Dm7 | G7/B | C6 |"
BETWEEN_C4_AND_C5 = "C: | C | F |", "register C4 C5"
MIXED = "C: | C | G7 | N.C. | Am | F6 G13 | N.C. | C |"


def voiced(session, line="show"):
    """The voicing of the one view that a line is answered with."""
    (view,) = answer_to(line, session).views
    return view.voiced


def hands(found):
    """The notes of the left and the right hand, chord by chord."""
    return [(each.left, each.right) for each in found.voicings]


def drawn(answer, width=80):
    return text_of(draw(answer, Page(width)))


def size(before, after_it):
    """The least sum of semitones over every way to hand the notes of the smaller chord on (taxicab norm)."""
    small, large = sorted((before, after_it), key=len)
    return min(
        sum(abs(a - b) for a, b in zip(small, chosen, strict=True)) for chosen in permutations(large, len(small))
    )


def upper(voicing):
    return [pitch.midi for pitch in voicing.upper]


def movement(found, loop=False):
    """Semitones of the upper voices over the whole, worked out here (D. Tymoczko, Science 313, 2006)."""
    rows = [upper(each) for each in found.voicings]
    return sum(size(*pair) for pair in pairwise([*rows, *([rows[0]] if loop else [])]))


def cost(found):
    return sum(found.costs)


# The list of paths


def test_all_paths_of_a_small_register_are_listed_in_order():
    # between C4 and C5 both chords lie in two ways; semitones 0 + 1 + 2, 1 + 2 + 0, 4 + 2 + 3, 5 + 5 + 5 by hand
    answer = answer_to("others", after(*BETWEEN_C4_AND_C5))
    rows = [[" ".join(map(str, each.right)) for each in path.voiced.voicings] for path in answer.paths]

    assert rows == [
        ["C4 E4 G4", "C4 F4 A4"], ["E4 G4 C5", "F4 A4 C5"], ["E4 G4 C5", "C4 F4 A4"], ["C4 E4 G4", "F4 A4 C5"],
    ]  # fmt: skip
    assert [path.cost for path in answer.paths] == [3, 3, 9, 15]
    assert [path.number for path in answer.paths] == [1, 2, 3, 4]
    assert [path.differs for path in answer.paths] == [(), (0, 1), (0,), (1,)]


@pytest.mark.parametrize("loop", ["off", "on"])
@pytest.mark.parametrize("style", STYLES)
def test_paths_begin_with_the_one_that_is_shown_and_cost_ever_more(style, loop):
    session = after(TURN, f"voice {style}", f"loop {loop}")
    shown, paths = voiced(session), answer_to("others --count 9", session).paths
    costs = [path.cost for path in paths]

    assert paths[0].voiced.pitches == shown.pitches
    assert costs == sorted(costs)
    assert costs == [cost(path.voiced) for path in paths]
    assert [path.voiced.costs.movement for path in paths] == [movement(path.voiced, loop == "on") for path in paths]
    assert [path.number for path in paths] == list(range(1, 10))


@pytest.mark.parametrize("chart", ["| D9 | C/E |", TURN, "| A7b9 | Cmaj7 | Cadd9 |"])
@pytest.mark.parametrize("style", STYLES)
def test_no_two_paths_are_alike_and_what_differs_is_told_exactly(style, chart):
    first, *others = answer_to("others --count 12", after(chart, f"voice {style}")).paths
    rows = [tuple(hands(path.voiced)) for path in (first, *others)]

    assert len(set(rows)) == len(rows)
    assert first.differs == ()
    for path, row in zip(others, rows[1:], strict=True):
        assert path.differs == tuple(place for place in range(len(row)) if row[place] != rows[0][place])
        assert path.differs


def test_a_page_lists_of_the_other_paths_what_differs_and_no_more():
    page = drawn(answer_to("others", after(*BETWEEN_C4_AND_C5)))

    assert page.split("\n") == [
        "in C major",
        " 1  3 semitones, the one you see",
        "    1 C: C4 E4 G4 over C3",
        "    2 F: C4 F4 A4 over F3",
        " 2  3 semitones",
        "    1 C: E4 G4 C5 over C3",
        "    2 F: F4 A4 C5 over F3",
        " 3  9 semitones",
        "    1 C: E4 G4 C5 over C3",
        " 4  15 semitones",
        "    2 F: F4 A4 C5 over F3",
        "Of paths 2 and on only the chords that differ from path 1 are listed.",
    ]


def test_there_are_as_many_paths_as_asked_for_or_as_there_are():
    session = after(CADENCE)

    assert [len(answer_to(f"others --count {count}", session).paths) for count in (1, 2, 12, 50)] == [1, 2, 12, 50]
    assert len(answer_to("others", session).paths) == 5
    assert len(answer_to("others --count 50", after(*BETWEEN_C4_AND_C5)).paths) == 4
    assert "There is no other path." in drawn(answer_to("others", after(CADENCE, "pin 1", "pin 2", "pin 3")))
    for count in ("0", "51", "-1", "two", "9999999999"):
        assert refusal(f"others --count {count}", session).hint == "write a number from 1 to 50"


def test_more_paths_begin_with_the_fewer():
    session = after(CADENCE, "voice drop2")

    assert answer_to("others --count 20", session).paths[:5] == answer_to("others", session).paths


def test_paths_are_those_of_the_library():
    tune = nearhand.parse_progression(CADENCE)
    for style in STYLES:
        listed = answer_to("others", after(CADENCE, f"voice {style}")).paths
        assert [path.voiced.pitches for path in listed] == [
            found.pitches for found in nearhand.best_paths(tune, 5, style)
        ]


# Taking one of them


@pytest.mark.parametrize("style", ["close", "drop2", "four-part", "rootless"])
def test_a_number_takes_the_path_of_the_list(style):
    session = after(CADENCE, f"voice {style}")
    listed = answer_to("others", session).paths
    for path in listed:
        chosen = respond(session, f"others {path.number}")
        assert hands(chosen.answer.views[0].voiced) == hands(path.voiced)
        assert chosen.session.wishes.path == path.number


def test_next_and_back_step_along_the_list_and_stay_there():
    session = after(CADENCE)
    listed = [path.voiced.pitches for path in answer_to("others", session).paths]
    seen = []
    for line in ("others next", "others next", "others next", "others back", "others back", "others back"):
        outcome = respond(session, line)
        session = outcome.session
        assert voiced(session).pitches == outcome.answer.views[0].voiced.pitches
        seen.append(listed.index(outcome.answer.views[0].voiced.pitches) + 1)

    assert seen == [2, 3, 4, 3, 2, 1]
    assert picture(refusal("others back", session)) == (
        "this is the best path already", "others ^back", "others lists the paths",
    )  # fmt: skip


def test_past_the_last_path_the_way_ends_with_a_refusal():
    session = after(*BETWEEN_C4_AND_C5, "others 4")

    assert refusal("others next", session).what == "there are only 4 paths, so there is no path 5"
    assert refusal("others 5", session).what == "there are only 4 paths, so there is no path 5"
    assert voiced(after("others back", start=session)).movement == 9


def test_the_list_says_which_path_is_seen_and_lists_the_best_first_all_the_same():
    session = after(*BETWEEN_C4_AND_C5, "others 3")
    answer = answer_to("others", session)

    assert answer.number == 3
    assert answer.paths == answer_to("others", after(*BETWEEN_C4_AND_C5)).paths
    assert [line for line in drawn(answer).split("\n") if "the one you see" in line] == [
        " 3  9 semitones, the one you see"
    ]


def test_each_step_is_undone_and_made_again():
    session = after(CADENCE, "others 2", "others next", "others back", "others 5")
    numbers = []
    for line in ("undo", "undo", "undo", "undo", "redo", "redo", "redo", "redo"):
        session = after(line, start=session)
        numbers.append(session.wishes.path)

    assert numbers == [2, 3, 2, 1, 2, 3, 2, 5]
    assert session.tune is not None


def test_a_list_changes_nothing_and_needs_no_undo():
    session = after(CADENCE, "to G", "others 2")

    for line in (
        "others",
        "others --count 3",
        "others --voicing drop2",
        "others 1 --voicing open",
        "others next --loop",
    ):
        assert respond(session, line).session == session


def test_in_another_key_the_best_path_is_shown_again_for_paths_are_counted_anew():
    session = after(CADENCE, "others 2")

    for line in ("to Eb", "to all", "next", "back", "home"):
        assert after(line, start=session).wishes.path == 1
        for view in answer_to(line, session).views:
            there = after(f"to {view.key}", start=after(CADENCE))
            assert view.voiced.pitches == answer_to("others", there).paths[0].voiced.pitches


@pytest.mark.parametrize("words", ['"{}" 2', '"{}" next', "{} 2"])
def test_with_a_chart_in_the_line_a_path_is_for_one_answer(words):
    session = after("C: | F | C |")
    outcome = respond(session, f"others {words.format(CADENCE)}")

    assert outcome.answer.views[0].voiced.pitches == voiced(after(CADENCE, "others 2")).pitches
    assert outcome.session.wishes.path == 1
    assert voiced(outcome.session).pitches == voiced(after(CADENCE)).pitches


def test_options_of_a_step_are_for_one_answer():
    session = after(CADENCE)
    outcome = respond(session, "others 3 --voicing drop2 --left octave")

    assert (
        outcome.answer.views[0].voiced.pitches
        == voiced(after(CADENCE, "voice drop2", "left octave", "others 3")).pitches
    )
    assert outcome.session == session


def test_nothing_voiced_has_no_paths_no_lines_and_no_reasons():
    session = after(CADENCE, "voice none")

    for line, sentence in (
        ("others", "nothing is voiced, so there are no paths"),
        ("why 2", "nothing is voiced"),
        ("lines", "nothing is voiced, so there are no lines"),
    ):
        assert refusal(line, session).what == sentence
        assert "voice close" in refusal(line, session).hint
        assert respond(session, f"{line} --voicing close").session == session


def test_rests_alone_have_nothing_to_list():
    for line in ("others", "lines"):
        assert drawn(answer_to(f'{line} "N.C." --key C'))
    assert refusal('why "N.C." 1 --key C').what == "there are no chords here"
    assert isinstance(answer_to('others "N.C." --key C'), OthersAnswer)


# Why


def test_a_reason_in_a_small_register_is_worked_out_by_hand():
    # both paths cost 3; C4 E4 G4 C4 F4 A4 lies nearer to F#4, the middle of C4 to C5: 4 + 3 half semitones off
    # against 4 + 5
    answer = answer_to("why 1", after(*BETWEEN_C4_AND_C5))
    (other,) = answer.others

    assert " ".join(map(str, answer.taken.voicing.pitches)) == "C3 C4 E4 G4"
    assert " ".join(map(str, other.voicing.pitches)) == "C3 E4 G4 C5"
    assert (answer.taken.cost, answer.taken.arriving, answer.taken.leaving) == (3, None, 3)
    assert (other.cost, other.arriving, other.leaving) == (3, None, 3)
    assert (answer.taken.parts, other.parts) == ((("movement", 3),), (("movement", 3),))
    assert decided_by(answer.taken, other) == "middle"
    assert (answer.taken.ties, other.ties) == ((5, 5 + 3), (5, 4 + 5))


@pytest.mark.parametrize("loop", ["off", "on"])
@pytest.mark.parametrize("style", STYLES)
def test_a_reason_is_about_what_is_shown(style, loop):
    session = after(TURN, f"voice {style}", f"loop {loop}")
    shown, chords = voiced(session), tuple(session.tune.progression.chords())
    count = len(shown.voicings)
    steps = [size(upper(before), upper(here)) for before, here in pairwise(shown.voicings)]
    back = size(upper(shown.voicings[-1]), upper(shown.voicings[0])) if loop == "on" else None
    for number in range(1, count + 1):
        answer = answer_to(f"why {number}", session)
        taken = answer.taken

        assert (answer.number, str(answer.key)) == (number, "C major")
        assert answer.chord == chords[number - 1]
        assert taken.voicing == shown.voicings[number - 1]
        assert taken.cost == cost(shown) == sum(value for _, value in taken.parts)
        assert taken.arriving == [back, *steps][number - 1]
        assert taken.leaving == [*steps, back][number - 1]


@pytest.mark.parametrize("key", ["C", "Eb", "B"])
@pytest.mark.parametrize("style", STYLES)
def test_whoever_pins_an_alternative_pays_what_the_reason_says(style, key):
    for chart, loop in ((CADENCE, "off"), (CADENCE, "on"), ("C: | C/E | F | G7 | Am | C |", "off")):
        session = after(chart, f"voice {style}", f"loop {loop}", f"to {key}")
        shown = voiced(session)
        for number in range(1, len(shown.voicings) + 1):
            answer = answer_to(f"why {number}", session)
            costs = [cost(shown)]
            for other in answer.others:
                notes = " ".join(map(str, other.voicing.pitches))
                found = voiced(session, f'show --pin "{number} {notes}"')
                assert cost(found) == other.cost == sum(value for _, value in other.parts)
                assert {pitch.midi for pitch in other.voicing.upper} <= {
                    pitch.midi for pitch in found.pitches[number - 1]
                }
                assert other.voicing.pitches != answer.taken.voicing.pitches
                costs.append(other.cost)
            assert costs == sorted(costs)


@pytest.mark.parametrize("style", STYLES)
def test_the_next_best_voicing_is_that_of_the_first_path_which_has_another(style):
    session = after(CADENCE, f"voice {style}")
    paths = answer_to("others --count 50", session).paths
    for number in (1, 2, 3):
        answer = answer_to(f"why {number}", session)
        taken = {pitch.midi for pitch in answer.taken.voicing.pitches}
        rows = [(path.cost, {pitch.midi for pitch in path.voiced.pitches[number - 1]}) for path in paths]
        first = next((cost for cost, row in rows if row != taken), None)

        assert first in (None, answer.others[0].cost)
        assert first is not None or paths[-1].cost <= answer.others[0].cost


@pytest.mark.parametrize("chart", [CADENCE, "| Am | F | C | G |", TURN])
@pytest.mark.parametrize("style", STYLES)
def test_what_decides_speaks_for_the_voicing_that_was_taken(style, chart):
    session = after(chart, f"voice {style}")
    for number in (1, 2, 3):
        answer = answer_to(f"why {number}", session)
        for other in answer.others:
            mine, theirs = (answer.taken.cost, *answer.taken.ties), (other.cost, *other.ties)
            reason = decided_by(answer.taken, other)
            differing = [name for name, a, b in zip(("cost", "bass", "middle"), mine, theirs, strict=True) if a != b]

            assert mine <= theirs
            assert reason == (differing[0] if differing else "order")


def test_the_bass_decides_between_equal_costs():
    # shells by hand: E3 G3 to F3 B3 over C3 to G2 moves 1 + 4 above and 5 below, G3 E4 to B3 F4 over C3 to G3 4 + 1
    # above and 7 below
    answer = answer_to("why 2", after("C: | C | G7 |", "voice shell"))
    same = answer.others[0]

    assert [str(pitch) for pitch in answer.taken.voicing.pitches] == ["G2", "F3", "B3"]
    assert [str(pitch) for pitch in same.voicing.pitches] == ["G3", "B3", "F4"]
    assert (answer.taken.cost, answer.taken.ties[0], same.cost, same.ties[0]) == (5, 5, 5, 7)
    assert decided_by(answer.taken, same) == "bass"
    assert "It costs the same in all; its bass moves further." in " ".join(drawn(answer).split())


def test_of_a_path_that_is_not_the_best_nothing_untrue_is_said():
    # the fourth path of the cadence lies lowest; the others cost the same and are nearer to F4, the middle
    answer = answer_to("why 2", after(CADENCE, "others 4"))

    assert [other.cost for other in answer.others] == [answer.taken.cost] * 2
    assert all(other.ties[1] < answer.taken.ties[1] for other in answer.others)
    assert "further from the middle" not in " ".join(drawn(answer).split())


def test_a_cheaper_voicing_than_that_of_a_chosen_path_is_called_cheaper():
    session = after(*BETWEEN_C4_AND_C5, "others 4")
    answer = answer_to("why 2", session)

    assert [(other.cost, decided_by(answer.taken, other)) for other in answer.others] == [(3, "cost")]
    assert "It costs 12 less in all." in drawn(answer)


def test_a_chord_that_stands_alone_and_one_that_leads_to_itself():
    alone, looped = answer_to('why "| C |" 1'), answer_to('why "| C |" 1 --loop')

    assert (alone.taken.arriving, alone.taken.leaving, alone.taken.cost) == (None, None, 0)
    assert (looped.taken.arriving, looped.taken.leaving, looped.taken.cost) == (0, 0, 0)
    assert "It stands alone." in drawn(alone)


def test_a_chord_that_can_only_lie_in_one_way_has_no_next_best():
    for lines in (("C: | C | F |", "register C4 A4"), (CADENCE, "pin 2", "pin 1", "pin 3")):
        answer = answer_to("why 2", after(*lines))

        assert answer.others == ()
        assert "has no other voicing under these wishes." in drawn(answer)


def test_chords_are_counted_without_rests_and_named_in_the_shown_key():
    answer = answer_to("why 3", after(MIXED, "to Eb"))

    assert (answer.number, str(answer.chord.root), str(answer.key)) == (3, "C", "Eb major")
    assert refusal("why 7", after(MIXED)).hint == "the chords are numbered 1 to 6"


def test_asking_why_changes_nothing():
    session = after(CADENCE, "others 2")

    for line in ("why 2", "why 1 --voicing drop2", "why 3 --loop", "lines", "lines --voicing four-part"):
        assert respond(session, line).session == session
    assert after('why "| C | F |" 2').wishes == after("lines | C | F |").wishes == after("| C | F |").wishes


# Lines


def rows_of(answer):
    return [[pitch and pitch.midi for pitch in voice.pitches] for voice in answer.lines.voices]


CHARTS_IN_LINES = [CADENCE, MIXED, TURN, "Eb minor: | i | bII6 | V7 | i |"]


@pytest.mark.parametrize("chart", CHARTS_IN_LINES)
@pytest.mark.parametrize("style", STYLES)
def test_the_lines_hold_the_notes_that_are_shown_and_no_others(style, chart):
    session = after(chart, f"voice {style}")
    shown, answer = voiced(session), answer_to("lines", session)
    columns = list(zip(*(voice.pitches for voice in answer.lines.voices), strict=True))

    assert len(columns) == len(shown.pitches)
    for column, pitches in zip(columns, shown.pitches, strict=True):
        sounding = [pitch for pitch in column if pitch is not None]
        assert {str(pitch) for pitch in sounding} == {str(pitch) for pitch in pitches}
        assert [pitch.midi for pitch in sounding] == sorted((pitch.midi for pitch in sounding), reverse=True)
        assert column[0] == pitches[-1]
        assert column[-1] is None or column[-1] == pitches[0]


@pytest.mark.parametrize("chart", CHARTS_IN_LINES)
@pytest.mark.parametrize("style", STYLES)
def test_a_note_is_held_where_its_line_had_the_same_just_before(style, chart):
    answer = answer_to("lines", after(chart, f"voice {style}"))

    for voice, row in zip(answer.lines.voices, rows_of(answer), strict=True):
        assert voice.held == (False, *(before is not None and before == here for before, here in pairwise(row)))


def motion_of(bass, top):
    """How two voices move against each other, by the signs of their steps (common practice, no source)."""
    if bass == 0 and top == 0:
        return "still"
    if bass == 0 or top == 0:
        return "oblique"
    return "contrary" if bass * top < 0 else "similar"


@pytest.mark.parametrize("style", [style for style in STYLES if style != "rootless"])
def test_the_motion_of_the_outer_voices_is_told(style):
    kinds = set()
    for chart in (*CHARTS_IN_LINES, "| C | C | C/E | C | Am |"):
        answer = answer_to("lines", after(chart, f"voice {style}"))
        steps = [list(pairwise(row)) for row in (rows_of(answer)[-1], rows_of(answer)[0])]
        moves = [tuple(after_it - before for before, after_it in pair) for pair in zip(*steps, strict=True)]

        assert answer.lines.motions == tuple(motion_of(*pair) for pair in moves)
        kinds |= set(answer.lines.motions)
    assert kinds == {"still", "oblique", "contrary", "similar"}


def test_without_a_bass_no_motion_is_told():
    for line in ("voice rootless", "left none"):
        answer = answer_to("lines", after(CADENCE, line))

        assert answer.lines.motions == (None, None)
        assert "bass" not in [voice.name for voice in answer.lines.voices]
        assert "outer" not in [line.split()[0] for line in drawn(answer).split("\n")]


NAMES = [
    ("four-part", ["soprano", "alto", "tenor", "bass"]),
    ("close", ["top", "4", "3", "2", "bass"]),
    ("open", ["top", "3", "2", "bass"]),
    ("guide-tones", ["top", "2", "bass"]),
    ("rootless", ["top", "3", "2", "1"]),
]  # fmt: skip


@pytest.mark.parametrize(("style", "names"), NAMES)
def test_voices_have_names_highest_first(style, names):
    answer = answer_to("lines", after(CADENCE, f"voice {style}"))
    labels = [line.split(" ")[0] for line in drawn(answer).split("\n") if line[9:10] == "|"]

    assert [voice.name for voice in answer.lines.voices] == names
    assert labels == ["chord", *names, *(["outer"] if style != "rootless" else [])]


def spreads(count, chord):
    """All ways to give a chord's notes to rows, low to high, its top note to the top row."""
    if len(chord) == count:
        return [tuple(chord)]
    return [
        (*spread[:gap], None, *spread[gap:]) for spread in spreads(count - 1, chord) for gap in range(count - 1)
    ]  # fmt: skip


def moved(before, after_it):
    return sum(abs(b - a) for a, b in zip(before, after_it, strict=True) if a is not None and b is not None)


@pytest.mark.parametrize("chart", ["| C | G7 | C |", "| F | Dm7 | G7 | C |", "| C | F6 | G13 | C | Am7 |"])
def test_where_the_number_of_voices_changes_the_rows_move_least(chart):
    answer = answer_to("lines", after(f"C: {chart}"))
    chords = [[pitch.midi for pitch in each.right] for each in voiced(after(f"C: {chart}")).voicings]
    count = max(map(len, chords))
    least = dict.fromkeys(spreads(count, chords[0]), 0)
    for chord in chords[1:]:
        least = {new: min(least[old] + moved(old, new) for old in least) for new in spreads(count, chord)}
    columns = [column[::-1] for column in zip(*rows_of(answer)[:-1], strict=True)]

    assert {len(chord) for chord in chords} == {3, 4}
    assert sum(moved(*pair) for pair in pairwise(columns)) == min(least.values())
    assert all(column.count(None) == count - len(chord) for column, chord in zip(columns, chords, strict=True))


def test_rests_stand_in_the_page_and_silence_no_line():
    answer = answer_to("lines", after(MIXED))
    page = drawn(answer, 120).split("\n")
    chords, top = (next(line for line in page if line.startswith(name)) for name in ("chord", "top"))

    assert chords.count("N.C.") == 2
    assert len(answer.lines.voices[0].pitches) == 6
    for place in [at for at in range(len(chords)) if chords.startswith("N.C.", at)]:
        assert top[place : place + 4] == "    "
    assert sum(line.count(" - ") for line in page if line[:1] in "234") == 3  # C, Am and C have three upper notes


def test_a_page_of_lines_is_read_like_a_score():
    # the soprano falls while the bass falls a fifth: similar; it stays while the bass rises a fourth: oblique
    page = drawn(answer_to("lines", after(CADENCE, "voice four-part"))).split("\n")

    assert page[1:8] == [
        "bar        1     2         3",
        "chord    | Dm7 | G7      | Cmaj7   ||",
        "soprano  | C5  | B4      | =B4     |",
        "alto     | F4  | =F4     | E4      |",
        "tenor    | A3  | G3      | =G3     |",
        "bass     | D3  | G2      | C3      |",
        "outer    |     | similar | oblique |",
    ]


@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
def test_every_demo_chart_has_its_lines_its_paths_and_its_reasons(chart):
    session = after(f"open {chart}")
    count = len(voiced(session).voicings)
    for width in (40, 120):
        for line in ("lines", "others", "why 1", f"why {count}", "others --voicing four-part --count 2"):
            assert max(map(len, drawn(answer_to(line, session), width).split("\n"))) <= width
