"""The engine: every plan and every next step, in plain Python for CPython and MicroPython alike."""

from .version import VERSION as VERSION
