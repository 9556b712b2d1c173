import type { Pack } from "../../documents";

interface Line {
  box_id: string | null;
  count: number | null;
}

/** From which boxes packed each line is handed over: the oldest first, no seconds; what none of them has is of no pack. */
export function pickPacks<L extends Line>(lines: L[], left: { pack_id: string; left: number }[], packs: Map<string, Pack>): (L & { pack_id: string | null })[] {
  const rest = new Map(left.map((one) => [one.pack_id, one.left]));
  return lines.flatMap((line) => {
    const picked: (L & { pack_id: string | null })[] = [];
    let wanted = line.count ?? 0;
    for (const [pack_id, have] of rest) {
      const pack = packs.get(pack_id);
      if (line.box_id === null || wanted === 0 || have <= 0 || !pack || pack.seconds || pack.box_id !== line.box_id) continue;
      const count = Math.min(wanted, have);
      picked.push({ ...line, count, pack_id });
      rest.set(pack_id, have - count);
      wanted -= count;
    }
    return wanted > 0 || picked.length === 0 ? [...picked, { ...line, count: line.count === null ? null : wanted, pack_id: null }] : picked;
  });
}
