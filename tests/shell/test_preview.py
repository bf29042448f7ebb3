"""What stands below a line while it is typed."""

from __future__ import annotations

import pytest
from timing import seconds_of

from nearhand.shell.preview import preview
from nearhand.shell.preview_rows import in_rows
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

NOTHING = Session()
E_MINOR = respond(NOTHING, "E minor: | Em | Bm/D | Am/C | B7 |").session
KEY_HINT = "write a key such as E minor, Bb major, F#m, or D dorian"
NEEDS_A_KEY = (
    '1 needs a key to be read in; put the key in front, as in "E minor: i iv V7", or\n'
    'add --key "E minor" (in the shell: key E minor)'
)
H_IS_NONE = "H is no chord root; write B for B natural and Bb for B flat"

# Line, what stands below. Numerals of common successions: common practice, no source.
CHORDS = [
    ("", ""), ("   ", ""), ("Em", "E minor: i"), ("Em B", "E minor: i V"), ("Em | B", "E minor: i V"),
    ("| Em | Bm/D | Am/C | B7 |", "E minor: i v6 iv6 V7"), ("| Dm7 | G7 | Cmaj7 |", "C major: ii7 V7 Imaj7"),
    ("E minor: i v6 iv6 V7", "E minor: Em Bm/D Am/C B7"), ("C: 1 4 57", "C major: C F G7"),
    ("C: C A7", "C major: I V7/ii"),
    ("|: C | F", "C major: I IV"), ("|: C | F |", "C major: I IV"), ("|: C | F :| [3/", "C major: I IV"),
    ("C (F", "C major: I IV"), ("1 4", NEEDS_A_KEY),
    ("E minor:", ""), ("E min", ""), ("e mi", ""), ("e", ""), ("N.C.", ""), ("N.C. C", "C major: I"),
]  # fmt: skip
TYPED = [
    ("Em | Bm7b", "E minor: i"), ("Em | Bma", "E minor: i V"), ("Em | Bmaj9#", "E minor: i"),
    ("Em | N", "E minor: i"), ("Em | b", "E minor: i"),
    ("Em | H", H_IS_NONE), ("Em | Hm |", H_IS_NONE), ("Em Bm7b |",
     "'b' is no part of a chord; a chord goes on for example with m, 7, maj7, m7,\n"
     "m7b5, dim7, 6, sus4, add9, 9, 13 or 7b9"),
    ("| C | |", "this bar is empty; write % to repeat the bar before, or N.C."),
    ("sho", "show [CHART]: show chords, numerals, numbers, notes and motion, in one key ..."),
    ("o", ""), ("shwo", "'shwo' is neither a verb nor a chord; did you mean show?"),
    ("em7", "'em7' is neither a verb nor a chord; chords begin with a capital letter: Em7"),
]  # fmt: skip
VERBS = [
    ("next", "next: move a fifth down round the circle"), ("next x", "nothing may follow next; write next alone"),
    ("to", "to KEYS: move to a key, to several, or to all twelve"), ("to H", f"'H' is no key; {KEY_HINT}"),
    ("to C", "to KEYS: move to a key, to several, or to all twelve"),
    ("loop o", "loop on|off: let the last chord lead back to the first, or not"),
    ("loop maybe", "'maybe' cannot follow loop; write loop on, or loop off"),
    ("show | Em | B7", "E minor: i V7"), ('show "| Em | B', "E minor: i V"),
    ("explain | C | F | G7 | C | 2", "C major: I IV V7 I"),
    ('show "| Em | B7 |" --key "G"', "G major: vi V7/vi"), ("show | Em | --key H ", f"'H' is no key; {KEY_HINT}"),
    ("show | Em | --to",
     "--to KEYS: a key, several between commas, or all: the twelve by falling fifths;\n"
     "all rising, all semitones, all tones, all random or all random 7 (the same order\n"
     "again)"),
    ("why 2 --pat", "--path N: the N-th best path instead of the best"),
    ("show --vocing ", "show has no option --vocing; did you mean --voicing?"),
    ("register C4 X5 ", "X is no note; write a capital letter A to G, then # or b if needed"),
]  # fmt: skip


@pytest.mark.parametrize(("line", "expected"), [*CHORDS, *TYPED, *VERBS])
def test_this_stands_below_a_line(line, expected):
    assert preview(line, NOTHING) == expected


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("i iv", "E minor: Em Am"),
        ("to C", "C minor: Cm Gm/B♭ Fm/A♭ G7"),
        ("to C major ", "the tune is in E minor, so it cannot move to C major; write C minor"),
        ("to C, G", "to KEYS: move to a key, to several, or to all twelve"),
        ("key G", "G major: vi iii6 ii6 V7/vi"),
        ("pin 2", "pin N [NOTES]: keep chord N as it is voiced now, or in the notes that follow;\noff lets go"),
    ],
)
def test_with_a_tune_moves_show_its_chords(line, expected):
    assert preview(line, E_MINOR) == expected


def test_nothing_is_said_about_the_word_at_the_cursor_while_it_is_typed():
    line = "| Em | Hm | B7 |"

    assert preview(line, NOTHING, cursor=len(line)) == H_IS_NONE
    assert preview(line, NOTHING, cursor=8) == preview(line, NOTHING, cursor=9) == ""
    assert preview(line, NOTHING, cursor=3) == H_IS_NONE


def test_the_last_chords_are_shown_where_not_all_find_room():
    line = "| Em | Bm/D | Am/C | B7 |" * 8

    for width in (20, 40, 60):
        shown = preview(line.replace("||", "|"), NOTHING, width)
        assert shown.startswith("E minor: ...") and shown.endswith("iv6 V7")
        assert len(shown) <= width


def test_a_long_text_is_cut_and_three_dots_say_so():
    assert in_rows("one two three four five", 9, rows=2) == "one two\nthree ..."
    assert in_rows("one two", 9) == "one two"
    assert in_rows("extraordinarily", 5) == "extra"
    assert in_rows("a b c d e f g", 1) == "a\nb\n."


def test_a_line_of_sixteen_chords_is_read_before_the_next_key():
    line = "| Em7 | Bm/D | Am/C | B7 | C | F#m7b5 | B7b9 | Em9 | Am7 D7 | Gmaj7 Cmaj7 | F#m7b5 B7 | Em Em/D |"
    assert preview(line, NOTHING)

    assert min(seconds_of(lambda: preview(line, NOTHING)) for _ in range(9)) < 0.05  # fast typing is a key in 100 ms


def test_settings_of_the_session_hold_below_the_line_too():
    session = respond(respond(NOTHING, "degrees major").session, "plain on").session

    assert preview("A minor: Am F Bb", session) == "A minor: i bVI bII"


def test_reading_a_line_runs_nothing(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    for line in (
        "save it",
        "save it.toml --over",
        "set degrees major",
        "open it",
        "quit",
        "undo",
        "recover",
        "to C",
        "completion bash",
    ):
        before = repr(E_MINOR)
        preview(line, E_MINOR)
        preview(line + " ", E_MINOR)
        assert repr(E_MINOR) == before
    assert list(tmp_path.iterdir()) == []


def test_what_is_quoted_is_previewed_as_show_previews_it():
    for line in ('"| Em | B7 |"', '"| Em | Hm |"', "'| C | F |' --voicing drop2"):
        assert preview(line, Session()) == preview(f"show {line}", Session())
