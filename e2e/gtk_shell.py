#!/usr/bin/python3
"""A window of WebKitGTK whose profile stays in a folder: the driver's own browser keeps nothing.

Started by WebKit's driver, with Debian's Python, which has the bindings: `gtk_shell.py <folder>`.
"""

import sys
from pathlib import Path

import gi

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")
from gi.repository import Gtk, WebKit2  # noqa: E402


def main(folder: Path) -> None:
    """Waits for the driver, which ends it."""
    data, cache = str(folder / "data"), str(folder / "cache")
    kept = WebKit2.WebsiteDataManager(base_data_directory=data, base_cache_directory=cache)
    context = WebKit2.WebContext(website_data_manager=kept)
    context.set_automation_allowed(True)

    def view(_: object) -> object:
        made = WebKit2.WebView(web_context=context, is_controlled_by_automation=True)
        window = Gtk.Window(default_width=480, default_height=900)
        window.add(made)
        window.show_all()
        return made

    def started(_: object, session: object) -> None:
        session.set_application_info(WebKit2.ApplicationInfo())
        session.connect("create-web-view", view)

    context.connect("automation-started", started)
    Gtk.main()


main(Path(sys.argv[-1]))
