/** Tables of the engine as CSV (RFC 4180); `services/spreadsheet.py` of the server writes the same bytes. */
export interface Table {
  columns: string[];
  instants: string[];
  rows: string[][];
}

export function csv({ columns, instants, rows }: Table): string {
  const isInstant = columns.map((name) => instants.includes(name));
  const shown = rows.map((row) => row.map((cell, at) => (cell && isInstant[at] ? time(cell) : cell)));
  return [columns, ...shown].map((row) => `${row.map(quoted).join(",")}\r\n`).join("");
}

/** Seconds since 1970 in ISO 8601, UTC. */
function time(seconds: string): string {
  return new Date(Number(seconds) * 1000).toISOString().replace(".000Z", "Z");
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
