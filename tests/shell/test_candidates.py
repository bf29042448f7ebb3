"""What may stand at the cursor, as sets."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from nearhand.shell.completion import candidates
from nearhand.verbs import options
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session
from nearhand.verbs.table import VERBS
from nearhand.verbs.topics import TOPICS
from nearhand.voicing.wishes import LEFT_PATTERNS, STYLES, TOP_LINES

NAMES = {verb.name for verb in VERBS}
E_MINOR = respond(Session(), "E minor: | Em | Bm/D | Am/C | B7 |").session
CIRCLE = ["C", "F", "Bb", "Eb", "Ab", "Db", "Gb", "B", "E", "A", "D", "G"]  # common practice, no source
SHARPER = {"Ab": "G#", "Db": "C#", "Gb": "F#"}
MAJOR_KEYS = {f"{tonic} major" for tonic in CIRCLE}
MINOR_KEYS = {f"{SHARPER.get(tonic, tonic)} minor" for tonic in CIRCLE}


def texts(line, session=E_MINOR):
    return {candidate.text for candidate in candidates(line, session)}


VERB_NAMES = [
    ("", NAMES), ("  ", NAMES), ("s", {name for name in NAMES if name.startswith("s")}),
    ("sh", {"show"}), ("  sh", {"show"}), ("show", {"show"}),
    ("h", {"home", "help"}), ("ex", {"explain"}), ("k", {"key", "keys"}), ("b", {"back", "borrow"}),
    ("x", set()), ("S", set()),
    ("|", set()), ("Em", set()), ("nonsense ", set()),
    ("xp", {"explain"}), ("trs", {"others"}), ("XP", set()), ("hm", {"home"}), ("rdo", {"redo"}),
]  # fmt: skip
HELPED = NAMES | {topic.name for topic in TOPICS}
WORDS = [
    ("voice ", {*STYLES, "none"}), ("voice c", {"close"}), ("voice drop2", {"drop2", "drop2and4"}),
    ("left ", set(LEFT_PATTERNS)), ("left t", {"tenth"}), ("top ", set(TOP_LINES)), ("weigh le", {"leap"}),
    ("span t", {"tenth"}), ("register ", {"moves", "stays", "off"}), ("pin 2 ", set()),
    ("voice C", {"close"}), ("voice close ", set()),
    ("loop ", {"on", "off"}), ("loop of", {"off"}), ("degrees ", {"mode", "major", "relative"}),
    ("degrees m", {"mode", "major"}), ("symbols j", {"jazz"}), ("sevenths ", {"chord", "scale"}),
    ("degrees ma", {"major"}), ("next ", set()), ("undo x", set()),
    ("help ", HELPED), ("help s", {name for name in HELPED if name.startswith("s")}),
    ("voice fp", {"four-part"}), ("voice gt", {"guide-tones"}), ("degrees rl", {"relative"}),
]  # fmt: skip
HANDS = ("--loop", "--left", "--span", "--register", "--top", "--pin", "--first", "--last", "--weights", "--path")
NOTATION = tuple(f"--{option.name}" for option in options.NOTATION)
OPTIONS = [
    ("show --", {"--to", "--melody", "--sing", "--way", "--voicing", *HANDS, "--key", *NOTATION}),
    ("show | Em | --v", {"--voicing"}), ("show --to C --d", {"--degrees"}), ("show --x", set()),
    ("show --voicing s", {"spread", "shell"}), ("show --left ", set(LEFT_PATTERNS)), ("show --left t --sp", {"--span"}),
    ("keys --", {"--melody", "--profile", "--key", *NOTATION}),
    ("save it --o", {"--over"}), ("next --", set()),
    ("list --", {"--plain", "--json"}),
]  # fmt: skip
KEYS = [
    ("to ", MINOR_KEYS | {"all"}), ("to E", {"E minor", "Eb minor"}), ("to e", {"E minor", "Eb minor"}),
    ("to Eb", {"Eb minor"}), ("to a", {"A minor", "all"}), ("to F# m", {"F# minor"}), ("to H", set()),
    ("  to   C#", {"C# minor"}),
]  # fmt: skip
TRUMPETS = {"trumpet", '"trumpet in C"', '"trumpet in D"', '"trumpet in Eb"'}
INSTRUMENTS = [
    ("parts --for tru", TRUMPETS), ("  parts --for tru", TRUMPETS), ("parts --for oboe,tub", {
        "oboe,tuba", '"oboe,tuba in Eb treble clef"', '"oboe,tuba in Bb treble clef"',
    }),
    ('parts --for "alto s', {"alto sax"}), ('parts --for "alto sax, Tru', {name.strip('"') for name in TRUMPETS}),
    ('parts --for "oboe, x', {"xylophone"}), ('parts --for "alto sax"', set()), ("parts --for kaz", set()),
    ('parts --for "oboe" ', set()), ("parts --for oboe --pl", {"--plain"}),
]  # fmt: skip


@pytest.mark.parametrize(("line", "expected"), [*VERB_NAMES, *WORDS, *OPTIONS, *KEYS, *INSTRUMENTS])
def test_a_line_may_go_on_with_these(line, expected):
    assert texts(line) == expected


def test_without_a_tune_major_and_minor_keys_are_offered():
    assert texts("to ", Session()) == MAJOR_KEYS | MINOR_KEYS | {"all"}


def test_with_a_tune_in_major_its_keys_are_offered():
    assert texts("to ", respond(Session(), "C: I V").session) == MAJOR_KEYS | {"all"}


@pytest.mark.parametrize("line", ["parts --for ", 'parts --for "', "parts --for al", 'parts --for "horn, '])
def test_every_instrument_that_is_offered_is_accepted(line):
    found = candidates(line, E_MINOR)
    assert found
    for candidate in found:
        whole = line[: candidate.start] + candidate.text
        whole += '"' * (whole.count('"') % 2)
        assert respond(E_MINOR, whole).answer.parts


@pytest.mark.parametrize("verb", ["to", "key"])
def test_every_key_that_is_offered_is_accepted(verb):
    for offered in texts(f"{verb} "):
        respond(E_MINOR, f"{verb} {offered}")


@pytest.mark.parametrize("line", ["voice ", "loop ", "degrees ", "help "])
def test_every_word_that_is_offered_is_accepted(line):
    assert texts(line)
    for offered in texts(line):
        respond(E_MINOR, line + offered)


@pytest.fixture
def desk(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    for name in ("lament.toml", "ladder.toml", "two doors.toml", "reel.abc", "notes.txt", ".hidden.toml"):
        (tmp_path / name).write_text("")
    for name in ("attic", "attic/old.toml", ".secret"):
        (tmp_path / name).mkdir() if "." not in name[1:] else (tmp_path / name).write_text("")
    return tmp_path


FILES = [
    ("open ", {"lament.toml", "ladder.toml", "two doors.toml", "reel.abc", "attic/"}),
    ("open la", {"lament.toml", "ladder.toml"}), ("open lam", {"lament.toml"}),
    ("open two d", {"two doors.toml"}), ("open attic/", {"attic/old.toml"}),
    ("open attic/o", {"attic/old.toml"}), ("open ./la", {"./lament.toml", "./ladder.toml"}), ("open nowhere/", set()),
    ("open no", set()), ("show lam", {"lament.toml"}), ("save l", {"lament.toml", "ladder.toml"}),
    ("show re", {"reel.abc"}), ("save re", set()),
    ("list ", {"attic/"}), ("list a", {"attic/"}), ("list l", set()), ("open a\0/", set()),
]  # fmt: skip


@pytest.mark.parametrize(("line", "expected"), FILES)
def test_charts_and_folders_are_offered(line, expected, desk):
    assert texts(line) == expected


def test_a_folder_of_anywhere_is_looked_into(desk, tmp_path):
    assert texts(f"open {tmp_path}/attic/") == {f"{tmp_path}/attic/old.toml"}


def test_a_candidate_takes_the_place_of_what_was_typed():
    (candidate,) = candidates("  to   C#", E_MINOR)

    assert (candidate.start, candidate.text) == (7, "C# minor")
    assert [offered.start for offered in candidates("show | Em | --v", E_MINOR)] == [12]


@pytest.mark.parametrize("verb", VERBS, ids=lambda verb: verb.name)
def test_every_verb_is_offered_with_its_help_and_every_option_with_its_own(verb):
    assert (verb.name, verb.help) in {(offered.text, offered.meaning) for offered in candidates("", E_MINOR)}
    assert {(f"--{option.name}", option.help) for option in verb.options} == {
        (offered.text, offered.meaning) for offered in candidates(f"{verb.name} --", E_MINOR)
    }


# Chords typed, those that are likely next, what they are: falling fifths and the usual steps (common practice, no
# source; the circle: R. Hutchinson, Music Theory for the 21st-Century Classroom).
CHORDS = [
    ("| Em | Bm/D | Am/C | ", ["B7 V7", "B V", "Em i", "D VII"]), ("| Em | B7 | ", ["Em i", "C VI", "Am iv"]),
    ("| Em | Bm/D | Am/C | B", ["B as it stands", "B7 V7"]), ("| C | F | G7 | C", []),
    ("C: I vi ", ["ii Dm", "IV F", "V7 G7", "V G"]), ("C: I V7/ii ", ["ii Dm", "ii7 Dm7", "V7/V D7"]),
    ("C: 1 4 ", ["5 G", "57 G7", "1 C", "2- Dm"]), ("A minor: ", ["Am i", "Dm iv", "F VI", "E V"]),
    ("A minor: | D", ["D as it stands", "Dm iv"]), ("C: C A7 D", ["D as it stands", "Dm ii", "Dm7 ii7", "D7 V7/V"]),
    ("show | Am | Dm | ", ["E7 V7", "E V", "Am i", "G VII"]), ('explain "| Am | E7 | ', ["Am i", "F VI", "Dm iv"]),
    ("| C | H | ", []), ("|: C: ", []), ("|", []), ("C: I | x", []),
]  # fmt: skip


@pytest.mark.parametrize(("line", "expected"), CHORDS)
def test_chords_that_are_likely_next_are_offered_with_what_they_are(line, expected):
    found = [f"{each.text} {each.meaning}" for each in candidates(line, Session())]

    assert found == expected


@pytest.mark.parametrize("line", ["| Em | Bm/D | ", "C: I vi ", "G: 1 4 ", "A minor: ", "D dorian: i IV "])
def test_every_chord_that_is_offered_is_read(line):
    assert texts(line, Session())
    for offered in texts(line, Session()):
        respond(Session(), line + offered)


def test_a_chord_that_is_being_typed_comes_first_or_nothing_is_offered_in_its_place():
    for typed in "ABCDEFG":
        offered = [each.text for each in candidates(f"| Em | Am | {typed}", Session())]
        assert offered[:1] in ([], [typed])


def is_in_order(letters, text):
    rest = iter(text.lower())
    return all(letter in rest for letter in letters.lower())


@given(st.text(max_size=20) | st.tuples(st.sampled_from(sorted(NAMES)), st.text(max_size=15)).map(" ".join))
def test_whatever_is_offered_has_what_was_typed(line):
    for session in (Session(), E_MINOR):
        found = candidates(line, session)
        for offered in found:
            assert is_in_order(line[offered.start :], offered.text)
        begun = [each for each in found if each.text.lower().startswith(line[each.start :].lower())]
        assert begun in ([], list(found))  # letters in order only where nothing begins so


@pytest.mark.parametrize(
    "line",
    [
        "E minor: | Em | Bm/D | (Am)",
        "show | Em | Bm/D | --to C minor --voicing none",
        "open attic/old.toml",
        "to C minor, G",
    ],
)
def test_every_prefix_of_a_line_has_its_candidates_or_none(line):
    for end in range(len(line) + 1):
        assert all(offered.start <= end for offered in candidates(line[:end], E_MINOR))
