import { readFileSync } from "node:fs";

import { expect, test } from "vitest";

import { csv, type Table } from "./csv";

// The server's writer is held to the same file by tests/engine/test_table.py.
const CASES = JSON.parse(readFileSync("../tests/csv_vectors.json", "utf8")) as { what: string; table: Table; csv: string }[];

test.each(CASES)("the phone writes the file that the server writes: $what", ({ table, csv: file }) => {
  expect(csv(table)).toBe(file);
});
