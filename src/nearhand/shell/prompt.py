"""The prompt on a terminal: colours while typing, the row below, completion, the keys that act, and pasting."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

from nearhand.notation.errors import InputError
from nearhand.shell.bindings import ACTIONS, EDITING, Action, line_of, place_after
from nearhand.verbs.session import Session

if TYPE_CHECKING:
    from prompt_toolkit import PromptSession
    from prompt_toolkit.completion import CompleteEvent, Completer, Completion
    from prompt_toolkit.document import Document
    from prompt_toolkit.formatted_text import StyleAndTextTuples
    from prompt_toolkit.history import History
    from prompt_toolkit.input import Input
    from prompt_toolkit.key_binding import KeyBindings, KeyPressEvent
    from prompt_toolkit.lexers import Lexer
    from prompt_toolkit.output import Output as TerminalOutput
    from prompt_toolkit.styles import Style


class Desk:
    """What the keys work on: the session, the chord explained last, a line left half typed, and lines refused."""

    def __init__(self, holder: list[Session]) -> None:
        self.holder = holder
        self.refused: set[str] = set()
        self.place = 0
        self.half_typed = ""
        self._notice = ("", "")

    @property
    def session(self) -> Session:
        """The session as it is now."""
        return self.holder[0]

    def notify(self, sentence: str, typed: str) -> None:
        """Let a sentence stand below the line for as long as nothing else is typed."""
        self._notice = (sentence, typed)

    def notice(self, typed: str) -> str:
        """The sentence that stands below what is typed; empty when there is none."""
        sentence, at = self._notice
        return sentence if typed == at else ""

    def read(self, prompt: PromptSession[str], message: str) -> str:
        """Read one line, or the line that a key types.

        Raises KeyboardInterrupt at Ctrl-C and EOFError at Ctrl-D, as the prompt does.
        """
        begun, self.half_typed = self.half_typed, ""
        self.notify("", "")
        text = prompt.prompt(message, default=begun)
        self.place = place_after(text, self.place)
        return text


def prompt_session(
    desk: Desk,
    history: History,
    input_: Input | None = None,
    terminal: TerminalOutput | None = None,
    vi: bool = False,
) -> PromptSession[str]:
    """The prompt for a desk; ``vi`` edits lines as vi does, otherwise as Emacs does."""
    from prompt_toolkit import PromptSession
    from prompt_toolkit.enums import EditingMode

    from nearhand.shell.suggesting import suggest_answered

    prompt: PromptSession[str] = PromptSession(
        history=history,
        completer=_completer(desk),
        complete_while_typing=False,
        auto_suggest=suggest_answered(desk.refused, lambda: desk.session),
        lexer=_lexer(desk),
        style=_style(),
        key_bindings=_key_bindings(desk),
        editing_mode=EditingMode.VI if vi else EditingMode.EMACS,
        input=input_,
        output=terminal,
    )
    _put_row_below(prompt, desk)
    return prompt


def _put_row_below(prompt: PromptSession[str], desk: Desk) -> None:
    """Put the preview right below the line (a toolbar of the library would wait for the terminal's answer)."""
    from prompt_toolkit.filters import is_done, to_filter
    from prompt_toolkit.layout import ConditionalContainer, FormattedTextControl, HSplit, Window

    def row() -> str:
        buffer = prompt.default_buffer
        notice = desk.notice(buffer.text)
        if not notice and not buffer.text.strip():
            return ""
        from nearhand.shell.preview import preview
        from nearhand.shell.preview_rows import in_rows

        columns = prompt.app.output.get_size().columns
        if notice:
            return in_rows(notice, columns)
        try:
            return preview(buffer.text, desk.session, columns, buffer.cursor_position)
        except Exception:  # what helps while one types must not end the shell; the answer will tell
            return ""

    below = Window(FormattedTextControl(row, style="class:preview"), dont_extend_height=True, height=None)
    layout = prompt.layout.container
    assert isinstance(layout, HSplit)
    prompt.layout.current_window.dont_extend_height = to_filter(True)
    layout.children.insert(1, ConditionalContainer(below, ~is_done))


def _completer(desk: Desk) -> Completer:
    from prompt_toolkit.completion import Completer, Completion

    class VerbCompleter(Completer):
        """Hands ``candidates`` to the terminal."""

        def get_completions(self, document: Document, complete_event: CompleteEvent) -> Iterable[Completion]:
            """Complete the text before the cursor."""
            from nearhand.shell.completion import candidates

            before = document.text_before_cursor
            for candidate in candidates(before, desk.session):
                yield Completion(candidate.text, candidate.start - len(before), display_meta=candidate.meaning)

    return VerbCompleter()


def _lexer(desk: Desk) -> Lexer:
    from prompt_toolkit.lexers import Lexer

    class LineLexer(Lexer):
        """Hands ``spans_of`` to the terminal."""

        def lex_document(self, document: Document) -> Callable[[int], StyleAndTextTuples]:
            """Style the lines of a document."""
            if not document.text.strip():
                return lambda number: [("", document.lines[number])] if number < len(document.lines) else []
            from nearhand.shell.highlighting import fragments_of

            try:
                lines = fragments_of(document.text, desk.session)
            except Exception:  # as in the row below
                lines = [[("", line)] for line in document.lines]
            return lambda number: [*lines[number]] if number < len(lines) else []

    return LineLexer()


def _style() -> Style:
    from prompt_toolkit.styles import Style

    from nearhand.render.screen import STYLES

    return Style([(role, _of_terminal(style)) for role, style in STYLES.items()])


def _of_terminal(style: str) -> str:
    """A style of the table of styles in the words that the prompt has for it; it has none for dim."""
    plain = ("bold", "italic", "underline")
    return " ".join(
        word if word in plain else f"ansi{word.replace('_', '')}" for word in style.split() if word != "dim"
    )


def _key_bindings(desk: Desk) -> KeyBindings:
    from prompt_toolkit.enums import DEFAULT_BUFFER
    from prompt_toolkit.filters import Condition, emacs_insert_mode, has_focus, vi_insert_mode
    from prompt_toolkit.key_binding import KeyBindings
    from prompt_toolkit.keys import Keys

    keys = KeyBindings()
    at_the_line = has_focus(DEFAULT_BUFFER)
    may_type_signs = at_the_line & (emacs_insert_mode | vi_insert_mode) & Condition(_is_empty)
    for action in ACTIONS:
        if action.function_key:
            keys.add(action.function_key, filter=at_the_line)(_handler(action, desk))
        if action.sign:
            keys.add(action.sign, filter=may_type_signs)(_handler(action, desk))

    @keys.add(Keys.BracketedPaste, filter=at_the_line)
    def _paste(event: KeyPressEvent) -> None:
        from nearhand.shell.pasting import joined

        try:
            event.current_buffer.insert_text(joined(event.data))
        except InputError as error:
            desk.notify(f"{error.what}; {error.hint}", event.current_buffer.text)

    return keys


def _is_empty() -> bool:
    from prompt_toolkit.application import get_app

    return not get_app().current_buffer.text


def _handler(action: Action, desk: Desk) -> Callable[[KeyPressEvent], None]:
    """What happens at a key: another way of editing, or a line that is answered at once."""

    def act(event: KeyPressEvent) -> None:
        buffer = event.current_buffer
        if action.line == EDITING:
            from prompt_toolkit.enums import EditingMode

            to_emacs = event.app.editing_mode == EditingMode.VI
            event.app.editing_mode = EditingMode.EMACS if to_emacs else EditingMode.VI
            desk.notify(f"lines are edited as in {'Emacs' if to_emacs else 'vi'} now; F12 changes back", buffer.text)
        else:
            desk.half_typed = buffer.text
            buffer.text = line_of(action, desk.session, desk.place)
            event.app.exit(result=buffer.text)

    return act
