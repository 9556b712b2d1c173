"""The engine: every plan and every next step, in plain Python for CPython and MicroPython alike."""

VERSION = "0.1.0"
