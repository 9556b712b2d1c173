import { batches, isOpen } from "../../state";

/** Tells two open batches of one product apart: "Squares", "Squares B", "Squares C". */
export function uniqueName(name: string): string {
  const open = [...batches.value.values()].filter(isOpen).map((one) => one.plan.name);
  const free = ["", ..."BCDEFGHIJKLMNOPQRSTUVWXYZ"].map((letter) => (letter ? `${name} ${letter}` : name));
  return free.find((one) => !open.includes(one)) ?? name;
}
