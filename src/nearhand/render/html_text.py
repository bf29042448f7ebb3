"""Text in HTML: nothing in it is HTML, and nothing steers."""

from __future__ import annotations

from nearhand.notation.errors import printable

_SAFE = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;"})


def escaped(text: str) -> str:
    """A text in which nothing is HTML, and nothing steers.

    >>> escaped("<b>Waltz</b> & 'more'")
    '&lt;b&gt;Waltz&lt;/b&gt; &amp; &#39;more&#39;'
    """
    return printable(text).translate(_SAFE)
