import { expect, test } from "vitest";

import { bare } from "../../build/bareEngine";

test("docstrings and comment lines go, code and its strings stay", () => {
  const source = '"""What it is."""\n\nA = "#1"  # said\n# why\n\ndef f():\n    """Does.\n\n    Long.\n    """\n    return "a\\"b"\n';
  expect(bare(source).trim()).toBe('A = "#1"  # said\ndef f():\n    return "a\\"b"');
});

test("a block that is nothing but its docstring stays a block", () => {
  const source = 'class Unfit(Exception):\n    """Why."""\n\n\ndef f():\n    """What."""\n    # how\n    return 1\n';
  expect(bare(source)).toBe("class Unfit(Exception):\n    pass\ndef f():\n    return 1\n");
});
