"""`python -m amberbench`: the same as the command `amberbench`."""

from .cli import main

main()
