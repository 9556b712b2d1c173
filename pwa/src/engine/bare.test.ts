import { expect, test } from "vitest";

import { bare, meaningless } from "../../build/bareEngine";

test("docstrings and comment lines go, code and its strings stay", () => {
  const source = '"""What it is."""\n\nA = "#1"  # said\n# why\n\ndef f():\n    """Does.\n\n    Long.\n    """\n    return "a\\"b"\n';
  expect(bare(source).trim()).toBe('A = "#1"  # said\ndef f():\n    return "a\\"b"');
});

test("a block that is nothing but its docstring stays a block", () => {
  const source = 'class Unfit(Exception):\n    """Why."""\n\n\ndef f():\n    """What."""\n    # how\n    return 1\n';
  expect(bare(source)).toBe("class Unfit(Exception):\n    pass\ndef f():\n    return 1\n");
});

test("meanings of fields go, names, units and choices stay", () => {
  const source = 'A = number("W/(m² K)", 1, 60, "heat the fill loses", default=10.0, basis="assumed")\nB = choice(("fork", "enrober"), "what it is dipped with")\n';
  expect(meaningless(source)).toBe('A = number("W/(m² K)", 1, 60, "", default=10.0, basis="assumed")\nB = choice(("fork", "enrober"), "")\n');
});
