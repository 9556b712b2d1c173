/** Short names that still tell batches apart: "Squares" for "Squares, 24 mm"; whole where two would be the same, with
 * its size left out where a letter of its own tells it: "Squares B". The same name twice stays the same. */
export function shortNames(names: string[]): string[] {
  const short = names.map(shortened);
  return names.map((name, index) => {
    const mine = short[index] ?? name;
    return short.some((one, other) => one === mine && names[other] !== name) ? name : mine;
  });
}

/** What stands before a comma or a bracket, and the letter behind it. */
function shortened(name: string): string {
  const head = name.split(/[,(]/)[0]?.trim() || name;
  const letter = / [B-Z]$/.exec(name)?.[0] ?? "";
  return head.endsWith(letter) ? head : head + letter;
}
