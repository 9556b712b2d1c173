import { expect, test } from "vitest";

import { bare, meaningless, tight } from "../../build/bareEngine";
import { inOrder } from "../../build/bareTexts";

test("docstrings and comment lines go, code and its strings stay", () => {
  const source = '"""What it is."""\n\nA = "#1"  # said\n# why\n\ndef f():\n    """Does.\n\n    Long.\n    """\n    return "a\\"b"\n';
  expect(bare(source).trim()).toBe('A = "#1"\ndef f():\n    return "a\\"b"');
});

test("a block that is nothing but its docstring stays a block", () => {
  const source = 'class Unfit(Exception):\n    """Why."""\n\n\ndef f():\n    """What."""\n    # how\n    return 1\n';
  expect(bare(source)).toBe("class Unfit(Exception):\n    pass\ndef f():\n    return 1\n");
});

test("meanings of fields go, names, units and choices stay", () => {
  const source = 'A = number("W/(m² K)", 1, 60, "heat the fill loses", default=10.0, basis="assumed")\nB = choice(("fork", "enrober"), "what it is dipped with")\n';
  expect(meaningless(source)).toBe('A = number("W/(m² K)", 1, 60, "", default=10.0, basis="assumed")\nB = choice(("fork", "enrober"), "")\n');
});

test("lines stand closer, blocks stay blocks", () => {
  const source = 'A = [\n    1,\n    {"b": "c, "},\n]\ndef f():\n    if A:\n        return g(\n            A,\n        )\n    return 1\n';
  expect(tight(source)).toBe('A=[1,{"b":"c, "},]\ndef f():\n if A:\n  return g(A,)\n return 1\n');
});

test("no blank stands beside a sign; those in texts, at the start of a line and between words stay", () => {
  const source = 'def f(a, *b):\n    (c, d) = a - 1, "x = \\"y, z\\""\n    return -c if d in (1, 2) else -1\n';
  expect(tight(source)).toBe('def f(a,*b):\n (c,d)=a-1,"x = \\"y, z\\""\n return-c if d in(1,2)else-1\n');
});

test("a translation travels in the order of the English texts, with a gap where it lacks one", () => {
  expect(inOrder('{"a": "one", "b": "two", "c": "three"}', '{"c": "tres", "a": "uno"}')).toBe('["uno",null,"tres"]');
});
