import type { MeltRequest } from "../../documents";
import type { Traits } from "../kindTraits";
import { rows } from "./rows";

export const cluster: Traits<"cluster"> = {
  route: "/plan/clusters",
  plannedBy: "cluster.plan",
  rows,
  coated: ({ finish }) => finish === "dipped",
  forWorker: ({ request: _request, ...plan }) => {
    const { positions_m: _positions, melt: _melt, inputs: _inputs, ...reply } = plan.reply;
    return { ...plan, reply };
  },
  under: ({ reply }) => reply.under.map(({ material }) => (typeof material === "string" ? material : null)),
  piece: ({ reply }) => ({
    caramel_kg: reply.deposits_kg / reply.clusters,
    under: reply.under.map(({ material, kg }) => ({ material: typeof material === "string" ? material : null, kg: kg / reply.clusters })),
  }),
  sheet: {
    fits: () => true,
    rows: ({ reply }) => ({ bursts: reply.melt.bursts.length, slab: 2, fills: reply.fills + 2, trays: reply.trays + 1 }),
    fill: ({ reply }) => ({ fill_kg: reply.fill_kg, low_c: (reply.melt_request as MeltRequest).window_low_c }),
  },
};
