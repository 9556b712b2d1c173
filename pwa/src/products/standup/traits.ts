import type { Traits } from "../kindTraits";

/** Begun from its caramel in the shop; a cube that stands for days is left alone. */
export const standup: Traits<"standup"> = {
  standsAlone: true,
};
