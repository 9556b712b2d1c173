"""The table: what, measured, beside, ratio, target for reading."""

from collections.abc import Iterable
from dataclasses import dataclass

from .timing import Compared

HEADS = ("what", "measured", "beside", "ratio", "target for reading")


@dataclass(frozen=True)
class Row:
    """One line of the table, as text."""

    what: str
    measured: str
    beside: str
    ratio: str
    target: str = ""

    @property
    def cells(self) -> tuple[str, ...]:
        return (self.what, self.measured, self.beside, self.ratio, self.target)


def time_row(what: str, found: Compared, beside: str, target_s: float | None = None, slower: float = 1.0) -> Row:
    """A row of times; `slower` multiplies both for a slower machine than the one they were taken on."""
    measured_s = found.measured_s * slower
    target = "" if target_s is None else _against(measured_s, target_s, ms(target_s))
    return Row(what, ms(measured_s), f"{beside} {ms(found.beside_s * slower)}", f"{found.ratio:.2f}", target)


def speed_row(what: str, found: Compared, beside: str, at_least: float) -> Row:
    """A row of times whose ratio is a speed: the share of the baseline's that is reached."""
    share = 1.0 / found.ratio
    target = f"≥ {at_least:g}: {'met' if share >= at_least else 'MISSED'}"
    return Row(what, ms(found.measured_s), f"{beside} {ms(found.beside_s)}", f"{share:.3f} of its speed", target)


def growth_row(what: str, found: Compared, beside: str, at_most: float) -> Row:
    """A row of times whose ratio is what more of something may cost."""
    target = f"≤ {at_most:g}×: {'met' if found.ratio <= at_most else 'MISSED'}"
    return Row(what, ms(found.measured_s), f"{beside} {ms(found.beside_s)}", f"{found.ratio:.2f}", target)


def size_row(what: str, measured: int, beside: str, beside_bytes: int, target: int) -> Row:
    """A row of sizes (bytes)."""
    ratio = f"{measured / beside_bytes:.2f}"
    return Row(what, kb(measured), f"{beside} {kb(beside_bytes)}", ratio, _against(measured, target, kb(target)))


def ms(seconds_s: float) -> str:
    """A duration for reading: three figures or so."""
    value = seconds_s * 1000.0
    return f"{value:.0f} ms" if value >= 100.0 else f"{value:.3g} ms"


def kb(size: int) -> str:
    """A size for reading (1 kB = 1,000 bytes)."""
    return f"{size / 1000.0:.1f} kB"


def _against(measured: float, target: float, shown: str) -> str:
    return f"≤ {shown}: {'met' if measured <= target else 'MISSED'}"


def drawn(rows: Iterable[Row]) -> str:
    """The rows as a padded Markdown table."""
    lines = [HEADS, *(row.cells for row in rows)]
    widths = [max(len(line[column]) for line in lines) for column in range(len(HEADS))]
    texts = [" | ".join(cell.ljust(width) for cell, width in zip(line, widths, strict=True)) for line in lines]
    rule = "-|-".join("-" * width for width in widths)
    return "\n".join(f"| {text} |" for text in [texts[0], rule, *texts[1:]])
