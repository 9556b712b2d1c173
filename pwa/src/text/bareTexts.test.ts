import { expect, test } from "vitest";

import { inOrder } from "../../build/bareTexts";

test("a translation travels in the order of the English texts, with a gap where it lacks one", () => {
  expect(inOrder('{"a": "one", "b": "two", "c": "three"}', '{"c": "tres", "a": "uno"}')).toBe('["uno",null,"tres"]');
});
