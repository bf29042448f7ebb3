"""The names of the library: keys, progressions and voicings in Python."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

import nearhand

SOURCE = Path(__file__).parents[2] / "src"
ROW = "| Em | Bm/D | Am/C | B7 |"


def modules_after(code: str) -> set[str]:
    """The modules of nearhand, and the heavy ones of others, that some code loads."""
    heavy = ("nearhand", "rich", "prompt_toolkit", "music21", "platformdirs")
    script = f"import sys; sys.path.insert(0, {str(SOURCE)!r}); {code}; print(*sys.modules)"
    run = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    return {name for name in run.stdout.split() if name.split(".")[0] in heavy}


def test_a_progression_is_moved_as_the_first_page_says():
    # E minor to C minor is a major third down (common practice, no source)
    tune = nearhand.parse_progression(ROW, nearhand.parse_key("E minor"))

    assert tune.numerals() == ("i", "v6", "iv6", "V7")
    assert tune.in_key(nearhand.parse_key("C minor")).symbols() == ("Cm", "Gm/B♭", "Fm/A♭", "G7")
    assert " ".join(map(str, nearhand.voice(tune, style="close").pitches[0])) == "E3 E4 G4 B4"


def test_a_key_that_is_not_given_is_inferred_and_says_so():
    tune = nearhand.parse_progression("| Am | Dm | E7 | Am |")

    assert (str(tune.key), tune.key_source) == ("A minor", "inferred")
    assert nearhand.parse_progression(ROW, nearhand.parse_key("G major")).key_source == "given"


def test_a_voiced_progression_has_one_row_of_rising_pitches_for_each_chord():
    voiced = nearhand.voice(nearhand.parse_progression(ROW))

    assert len(voiced.pitches) == 4
    for pitches in voiced.pitches:
        assert list(pitches) == sorted(pitches, key=lambda pitch: pitch.midi)
    assert voiced.movement == 11
    assert nearhand.voice(nearhand.parse_progression(ROW), loop=True).loops


@pytest.mark.parametrize(
    "call",
    [
        lambda: nearhand.parse_key("H minor"),
        lambda: nearhand.parse_key(""),
        lambda: nearhand.parse_progression("| Em | Hm |"),
        lambda: nearhand.parse_progression(""),
        lambda: nearhand.parse_progression("i iv V"),
    ],
)
def test_what_cannot_be_read_is_a_value_error_that_tells_its_place(call):
    with pytest.raises(ValueError) as caught:
        call()

    assert type(caught.value) is nearhand.InputError
    assert 0 <= caught.value.start <= len(caught.value.text)


def test_a_style_that_does_not_exist_is_a_value_error():
    with pytest.raises(ValueError, match="style must be one of close"):
        nearhand.voice(nearhand.parse_progression(ROW), style="opened")


def test_every_public_name_is_there_and_no_other_is():
    assert all(getattr(nearhand, name) is not None for name in nearhand.__all__)
    with pytest.raises(AttributeError, match="'nearhand' has no attribute 'parse_chords'"):
        _ = nearhand.parse_chords


def test_importing_nearhand_loads_nothing_else_of_it():
    assert modules_after("import nearhand") == {"nearhand"}


def test_the_library_loads_neither_screen_nor_shell():
    loaded = modules_after(f"import nearhand; nearhand.voice(nearhand.parse_progression({ROW!r}))")

    assert "nearhand.library" in loaded
    assert not [name for name in loaded if not name.startswith("nearhand")]
    assert not [name for name in loaded if name.startswith(("nearhand.render", "nearhand.shell", "nearhand.cli"))]
