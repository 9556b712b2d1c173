/** Chance that can be repeated: the same seed, the same story (mulberry32, public domain). */
export class Chance {
  constructor(private state: number) {}

  /** A number in [0, 1). */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(this.state ^ (this.state >>> 15), 1 | this.state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  }

  happens(share: number): boolean {
    return this.next() < share;
  }

  between(low: number, high: number): number {
    return low + this.next() * (high - low);
  }

  oneOf<T>(all: readonly T[]): T {
    const one = all[Math.floor(this.next() * all.length)];
    if (one === undefined) throw new Error("nothing to choose from");
    return one;
  }
}
