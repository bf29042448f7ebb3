"""Help by topic: what it says is held against the reader and the speller themselves, and its examples answer."""

from __future__ import annotations

import pytest
from verbs.session_words import FALLING_BASS, after, answer_to, numbers, numerals, refusal, symbols

from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.errors import InputError
from nearhand.render.answers import draw
from nearhand.render.page import Page, text_of
from nearhand.theory.melody import ORNAMENTS
from nearhand.verbs.groups import MORE, groups
from nearhand.verbs.helping import HelpAnswer, RunAnswer
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session
from nearhand.verbs.table import BY_NAME, VERBS
from nearhand.verbs.topics import BY_TOPIC, TOPICS
from nearhand.voicing.wishes import STYLES

EXAMPLES = [(topic.name, number) for topic in TOPICS for number in range(1, len(topic.examples) + 1)]


def page(line: str, width: int = 80, plain: bool = False) -> list[str]:
    return text_of(draw(answer_to(line), Page(width, plain))).split("\n")


def test_help_alone_is_short():
    assert len(page("help")) <= 24
    assert len(page("help", width=40)) <= 30
    assert max(map(len, page("help", width=40))) <= 40


def test_help_alone_names_every_verb_once_and_every_topic():
    told = " ".join(page("help")).replace(",", " ").split()

    assert [name for _, members in groups() for name in members if name not in told] == []
    assert sorted(name for _, members in groups() for name in members) == sorted(verb.name for verb in VERBS)
    assert [topic.name for topic in TOPICS if topic.name.split()[0] not in told] == []


def test_every_verb_is_sorted_by_what_one_does_with_it():
    assert [group for group, _ in groups() if group == MORE] == []


@pytest.mark.parametrize("line", ["help everything", "help verbs"])
def test_help_on_everything_has_a_line_for_every_verb(line):
    starts = [text.split()[0] for text in page(line) if text.startswith("  ") and not text.startswith("   ")]

    assert starts == [verb.name for verb in VERBS]


@pytest.mark.parametrize("topic", TOPICS, ids=lambda topic: topic.name)
def test_a_topic_is_found_by_all_its_names_and_fits_on_a_screen(topic):
    for name in (topic.name, *topic.aliases, topic.name.upper()):
        answer = answer_to(f"help {name}")
        assert isinstance(answer, HelpAnswer)
        assert answer.topic is topic

    lines = text_of(draw(HelpAnswer(None, True, topic), Page(80))).split("\n")
    assert len(lines) < (24 if not topic.rows else 32)  # a list of keys is read once, and may be paged
    assert lines[0] == f"{topic.name}: {topic.summary}"
    assert all(line.isascii() for line in lines)


def test_no_two_topics_share_a_name():
    assert len(BY_TOPIC) == sum(1 + len(topic.aliases) for topic in TOPICS)


def test_a_word_that_is_verb_and_topic_is_told_as_both():
    for name, topic in (("keys", "keys"), ("plain", "plain"), ("melody", "melodies")):
        answer = answer_to(f"help {name}")
        assert (answer.verb.name, answer.topic.name) == (name, topic)

    assert {alias for alias in BY_TOPIC if alias in BY_NAME} == {"keys", "plain", "melody"}


@pytest.mark.parametrize(("topic", "number"), EXAMPLES)
def test_every_example_of_a_topic_answers(topic, number, desk):
    outcome = respond(after(f"help {topic}"), f"run {number}")

    assert isinstance(outcome.answer, RunAnswer)
    assert outcome.answer.line == BY_TOPIC[topic].examples[number - 1]
    assert outcome.answer == RunAnswer(outcome.answer.line, respond(Session(), outcome.answer.line).answer)
    for width in (80, 40):
        assert max(len(cells) for cells in text_of(draw(outcome.answer, Page(width))).split("\n")) <= width


@pytest.mark.parametrize(("topic", "number"), EXAMPLES)
def test_the_examples_answer_with_a_tune_on_the_stand_too(topic, number, desk):
    session = after(FALLING_BASS, "to C minor", f"help {topic}")

    assert respond(session, f"run {number}").answer.answer is not None


def test_run_does_what_the_line_would_do_and_undo_takes_it_back():
    session = after(FALLING_BASS, "help minor", "run 1")

    assert symbols(session) == "Cm Gm/Bb Fm/Ab G7"  # spelled in C minor, common practice, no source
    assert numerals(session) == "i v6 iv6 V7"
    assert symbols(after("undo", start=session)) == "Em Bm/D Am/C B7"
    assert symbols(after("undo", "redo", "undo", "run 1", start=session)) == "Cm Gm/Bb Fm/Ab G7"


def test_run_alone_runs_the_first_example():
    assert answer_to("run", after("help minor")) == answer_to("run 1", after("help minor"))


def test_help_changes_nothing_that_undo_would_see():
    session = after(FALLING_BASS)

    for line in ("help minor", "help", "help show"):
        outcome = respond(session, line)
        assert outcome.session.previous is session.previous
        assert outcome.session._replace(lesson=session.lesson) == session


def test_help_on_a_verb_leaves_no_example_to_run():
    assert refusal("run 1", after("help minor", "help show")).what == "there is no example to run"


@pytest.mark.parametrize(
    ("line", "sentence", "hint"),
    [("run 4", "there is no example 4", "the examples are numbered 1 to 3"),
     ("run 0", "there is no example 0", "the examples are numbered 1 to 3"),
     ("run two", "'two' is not an example's number", "write run 2"),
     ("run 1 2", "'1 2' is not an example's number", "write run 2")],
)  # fmt: skip
def test_a_number_without_an_example_is_refused(line, sentence, hint):
    error = refusal(line, after("help minor"))

    assert (error.what, error.hint, error.start) == (sentence, hint, 4)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [("mnor", "minor"), ("numreals", "numerals"), ("chord smybols", "chord symbols"), ("voicngs", "voicings"),
     ("explian", "explain"), ("borowed chords", "borrowed chords"), ("setings", "settings")],
)  # fmt: skip
def test_an_unknown_word_gets_its_nearest_neighbour_among_verbs_and_topics(typed, meant):
    assert refusal(f"help {typed}").hint == f"did you mean help {meant}?"


def text_of_topic(name):
    return " ".join(BY_TOPIC[name].text)


@pytest.mark.parametrize(
    "spellings",
    ["Cmaj7 CM7 C^7", "Cm7 C-7 Cmin7", "Cdim Co", "Cm7b5 C-7b5", "C+ Caug", "C7b9#11 C7(b9,#11)", "C2 C(add9)"],
)
def test_spellings_that_the_topic_calls_one_chord_are_one(spellings):
    words = spellings.split()

    assert all(word in text_of_topic("chord symbols") for word in words)
    assert len({parse_chord(word) for word in words}) == 1


def test_what_the_topics_say_of_minor_is_so():
    # forms of minor and their chords: common practice, no source
    assert "v is Gm with Bb, V7 is G7 with B" in text_of_topic("minor")
    assert symbols(after("C minor: v V7")) == "Gm G7"
    assert "VI and VII are on the low degrees already: F and G in A minor" in text_of_topic("minor")
    assert symbols(after("A minor: VI VII")) == "F G"
    assert symbols(after("degrees major", "A minor: bVI bVII")) == "F G"


def test_what_the_topics_say_of_numerals_and_numbers_is_so():
    assert symbols(after("C: V7/ii")) == "A7"
    assert symbols(after("A minor: v/7")) == "Em/G"
    assert symbols(after("C: I7")) == "C7" and symbols(after("sevenths scale", "C: I7")) == "Cmaj7"
    assert symbols(after("G: 1 5/7 6- 4")) == "G D/F# Em C"
    assert symbols(after("C: 57")) == "G7"
    assert numbers(after("A minor: 1-")) == "1-"
    assert numbers(after("degrees relative", "A minor: i")) == "6-"


def test_what_the_topics_say_of_borrowed_chords_is_so():
    assert numerals(after("C: Fm Bb Ab")) == "iv bVII bVI"
    scale = after("C minor: i").tune.key.mode.degrees
    key = after("C minor: i").tune.key
    notes = {str(key.tonic.up(place)) for place in scale}
    for chord in ("Fm", "Bb", "Ab"):
        assert {str(tone) for tone in parse_chord(chord).tones} <= notes


def test_what_the_topics_say_of_bars_and_moves_is_so():
    assert [int(slot.beats) for slot in after("| C / / G7 |").tune.progression.bars[0].slots] == [3, 1]
    assert after("|: Am | Dm/F | E7 :|").loops and not after("|: Am | Dm/F | E7 :|", "loop off").loops
    assert str(after("E minor: i", "to C").shown_key) == "C minor"
    assert str(after("C: I", "up").shown_key) == "Db major" and str(after("C: I", "down").shown_key) == "B major"
    for line in ("key A minor", "relative", "parallel"):
        assert symbols(after("C: I V", line)) == "C G"
    assert str(after("C: I", "next").shown_key) == "F major" and str(after("C: I", "back").shown_key) == "G major"


def notes(melody, key=""):
    """What a melody sounds like: its notes with their beats."""
    session = after(f"melody --alone {f'--key {key} ' if key else ''}{melody}")
    return [f"{note.pitch} {note.beats}" for note in session.tune.melody.sounding()]


def test_what_the_topic_says_of_melodies_is_so():
    # names, degrees, movable and fixed syllables: common practice, no source
    rows = dict(BY_TOPIC["melodies"].rows)

    assert rows["E4 F# Bb"].startswith("names; without an octave the nearest to the note before")
    assert notes("E4 F# Bb") == ["E4 1", "F#4 1", "Bb4 1"] and notes("B3 C") == ["B3 1", "C4 1"]
    assert notes("5 b3 #4", "C") == ["G4 1", "Eb4 1", "F#4 1"]
    assert notes("7 #7", "Am") == ["G4 1", "G#4 1"]
    assert notes("1 1' 5 5_", "C") == ["C4 1", "C5 1", "G4 1", "G3 1"]
    assert notes("do fi te", "C") == ["C4 1", "F#4 1", "Bb4 1"] and notes("Do Re Mi") == notes("C D E")
    assert notes("G: 5 3") == notes("5 3", "G")
    assert notes("1 2 3 5 | - - - 1", "C") == ["C4 1", "D4 1", "E4 1", "G4 4", "C4 1"]
    assert notes("5:2 5:3/2", "C") == ["G4 2", "G4 3/2"]
    assert notes("[5 6] [5:3 6] [5 6 7]:2", "C") == [
        *("G4 1/2", "A4 1/2", "G4 3/4", "A4 1/4", "G4 2/3", "A4 2/3", "B4 2/3")
    ]
    assert notes("1 r 0 1", "C") == ["C4 1", "C4 1"]
    assert rows["{6}5 5(tr)"].endswith(", ".join(f"({name})" for name in ORNAMENTS))
    assert after("melody C: {6}5 5(tr)").tune.melody.notes[0].graces
    assert after("melody C: 5_ | 1 2 3 4").tune.melody.has_pickup
    assert str(after("melody C: 1 2 3 1 | [3/4] 1 2 3").tune.melody.bars[1].meter) == "3/4"


def test_families_that_the_topics_name_exist():
    named = text_of_topic("voicings").partition("family: ")[2].partition(" and more")[0].split(", ")

    assert set(named) <= set(STYLES)


def test_verbs_that_the_settings_topic_names_exist():
    read, _, rest = text_of_topic("settings").partition(" say how chords are read and written; ")
    played, _, rest = rest.partition(" how they are played; ")
    named = f"{read} {played} {rest.partition(' how answers')[0]}".replace(",", "").replace(" and ", " ").split()

    assert len(named) == 15
    assert set(named) <= set(BY_NAME)


@pytest.mark.parametrize("words", [("minor",), ("chord", "symbols"), ("show",), (), ("everything",)])
def test_help_on_a_command_line_answers_the_same_words(words, capsys):
    from nearhand.cli import main

    assert main(["help", *words]) == 0
    printed = capsys.readouterr().out
    if words in (("minor",), ("chord", "symbols")):
        assert " ".join(words) in printed and BY_TOPIC[" ".join(words)].examples[0] in " ".join(printed.split())


def test_help_on_a_command_line_refuses_what_there_is_not(capsys):
    from nearhand.cli import main

    assert main(["help", "minr"]) == 2
    assert "did you mean help minor?" in capsys.readouterr().err


def test_a_refused_run_leaves_everything_as_it_was():
    session = after(FALLING_BASS, "help minor")
    before = repr(session)

    with pytest.raises(InputError):
        respond(session, "run 9")

    assert repr(session) == before


@pytest.mark.parametrize("word", ["tune", "Solfege", "notes", "abc", "rhythm", "syllables", "theme"])
def test_words_that_players_try_first_lead_to_the_verb_of_melodies(word):
    assert refusal(word).hint == "did you mean melody?"
