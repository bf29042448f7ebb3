"""Texts kept in a file one a line, whatever is in them: line ends and signs are written in letters."""

from __future__ import annotations

from collections.abc import Iterable

LARGEST_FILE = 20_000_000
_CODE = "unicode_escape"


def written_lines(texts: Iterable[str]) -> str:
    r"""Texts as whole lines.

    >>> written_lines(["C: | C |\n| F |", "voice drop2"])
    'C: | C |\\n| F |\nvoice drop2\n'
    """
    return "".join(f"{text.encode(_CODE).decode('ascii')}\n" for text in texts)


def parsed_lines(data: bytes) -> list[str]:
    r"""The texts of whole lines; a last line without its end was cut off while it was written, and is left out.

    >>> parsed_lines(b"C: | C |\\n| F |\nvoice drop2\nvoice dr")
    ['C: | C |\n| F |', 'voice drop2']
    """
    texts = []
    for line in data.split(b"\n")[:-1]:
        try:
            texts.append(line.decode("ascii").encode("ascii").decode(_CODE))
        except UnicodeDecodeError:  # not ours
            continue
    return texts


def read_lines(path: str) -> list[str]:
    """The texts of a file; none where it is missing, too large, or cannot be read."""
    try:
        with open(path, "rb") as file:
            data = file.read(LARGEST_FILE + 1)
    except (OSError, ValueError):
        return []
    return [] if len(data) > LARGEST_FILE else parsed_lines(data)
