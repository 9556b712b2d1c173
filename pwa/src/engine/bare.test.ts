import { expect, test } from "vitest";

import { bare } from "../../build/bareEngine";

test("docstrings and comment lines go, code and its strings stay", () => {
  const source = '"""What it is."""\n\nA = "#1"  # said\n# why\n\ndef f():\n    """Does.\n\n    Long.\n    """\n    return "a\\"b"\n';
  expect(bare(source).trim()).toBe('A = "#1"  # said\ndef f():\n    return "a\\"b"');
});
