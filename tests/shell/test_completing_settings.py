"""Completion behind ``set``: the names of the settings with what they mean, then what each may be."""

from __future__ import annotations

import pytest

from nearhand.shell.completion import candidates
from nearhand.verbs.lasting import SETTINGS
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session


@pytest.fixture(autouse=True)
def _home(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))  # XDG Base Directory Specification


def texts(line):
    return [candidate.text for candidate in candidates(line, Session())]


def test_names_are_offered_with_their_meanings():
    assert texts("set ") == list(SETTINGS)
    assert texts("set sp") == ["span"]
    assert {each.meaning for each in candidates("set ", Session())} == {each.meaning for each in SETTINGS.values()}


@pytest.mark.parametrize("name", SETTINGS)
def test_the_values_offered_are_those_of_the_verb_and_default(name):
    assert texts(f"set {name} ") == [*texts(f"{name} "), "default"]


@pytest.mark.parametrize("name", SETTINGS)
def test_every_value_that_is_offered_is_accepted(name):
    for value in texts(f"set {name} "):
        respond(Session(), f"set {name} {value}")


def test_a_value_takes_the_place_of_what_was_typed():
    (found,) = candidates("set symbols ja", Session())

    assert ("set symbols ja"[: found.start] + found.text) == "set symbols jazz"
    assert texts("set symbols de") == ["default"]


def test_no_such_setting_has_no_values():
    assert texts("set nothing ") == []
