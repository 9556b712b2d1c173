import type { Facts } from "../kind";

/** Begun from its caramel in the shop; a cube that stands for days is left alone. */
export const standup: Facts<"standup"> = {
  standsAlone: true,
};
