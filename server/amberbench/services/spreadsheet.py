"""Tables of the engine as CSV (RFC 4180); `pwa/src/state/csv.ts` writes the same bytes."""

import csv
import io
from datetime import UTC, datetime
from typing import Any


def write(table: dict[str, Any]) -> str:
    """A table `{columns, instants, rows}` of text as CSV; seconds since 1970 become ISO 8601, UTC."""
    instants = {table["columns"].index(name) for name in table["instants"]}
    file = io.StringIO(newline="")
    writer = csv.writer(file)
    writer.writerow(table["columns"])
    for row in table["rows"]:
        writer.writerow([_time(cell) if cell and at in instants else cell for at, cell in enumerate(row)])
    return file.getvalue()


def _time(seconds: str) -> str:
    return datetime.fromtimestamp(int(seconds), UTC).strftime("%Y-%m-%dT%H:%M:%SZ")
