"""The keys that act: one table for the terminal, for the list of keys, and for the topic of help.

Function keys act at any time, and a line that is half typed stays. Signs act while the line is empty and nothing in the
language begins with them. All other keys are left to line editing, as Emacs and vi have it.
"""

from __future__ import annotations

from nearhand.theory.record import NamedTuple

EDITING = "editing"
"""An action that is no verb: Emacs and vi editing change places."""
NEXT_CHORD, CHORD_BEFORE, LOOP = "next chord", "chord before", "loop"


class Action(NamedTuple):
    """What a key does: its function key, its sign for the empty line (one of them may be missing), a line, its help.

    ``line`` is the verb line it types; that of a chord's number or a switch is made by ``line_of``.
    """

    function_key: str
    sign: str
    line: str
    help: str


ACTIONS = (
    Action("f1", "?", "help keys", "list these keys"),
    Action("f2", "=", "home", "home, to the tune's own key"),
    Action("f3", "<", "back", "a fifth up round the circle"),
    Action("f4", ">", "next", "a fifth down round the circle"),
    Action("f5", "-", "down", "a semitone down"),
    Action("f6", "+", "up", "a semitone up"),
    Action("f7", ",", CHORD_BEFORE, "the chord before, explained"),
    Action("f8", ".", NEXT_CHORD, "the next chord, explained"),
    Action("f9", ";", "others next", "the next best voicing path"),
    Action("f10", "!", "others back", "the voicing path before"),
    Action("f11", "*", LOOP, "loop on or off"),
    Action("", "&", "relative", "the same chords in the relative key"),
    Action("", "/", "parallel", "the same chords in the parallel key"),
    Action("f12", "", EDITING, "edit lines as in vi, or as in Emacs"),
)
USUAL = (
    ("Enter", "answers the line"),
    ("Tab", "completes it, or shows what may stand here"),
    ("Up, Down", "lines typed before"),
    ("Right, Ctrl-E", "takes the grey end that is proposed"),
    ("Ctrl-R", "looks for a line typed before"),
    ("Ctrl-Q", "and then a sign: writes the sign"),
    ("Ctrl-C", "clears the line"),
    ("Ctrl-D", "leaves"),
)
SIGNS_SAY = "Signs act while the line is empty, function keys at any time: a line that is half typed stays."


def keys_help() -> tuple[tuple[str, str], ...]:
    """Every key and what it does: the keys that act, then those that edit the line.

    >>> keys_help()[3]
    ('F4 or >', 'a fifth down round the circle')
    """
    acting = tuple((_name(action), action.help) for action in ACTIONS)
    return (*acting, *USUAL)


def _name(action: Action) -> str:
    return " or ".join(key for key in (action.function_key.upper(), action.sign) if key)
