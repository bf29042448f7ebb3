"""Where a player's own files of this program lie: settings in one folder, what it keeps by itself in another."""

from __future__ import annotations

import os

NAME = "nearhand"
SETTINGS_FILE = "settings.toml"


def config_folder() -> str:
    """The folder of the settings (on Linux that of the XDG Base Directory Specification)."""
    from platformdirs import user_config_dir

    return user_config_dir(NAME, appauthor=False)


def data_folder() -> str:
    """The folder of the history, the recent charts, and the journals."""
    from platformdirs import user_data_dir

    return user_data_dir(NAME, appauthor=False)


def settings_path() -> str:
    """Where the settings are kept; a link is followed, so that what it leads to is read and written."""
    return os.path.realpath(os.path.join(config_folder(), SETTINGS_FILE))
