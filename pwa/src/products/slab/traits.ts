import type { Traits } from "../kindTraits";
import { rows } from "./rows";

export const slab: Traits<"slab"> = {
  route: "/plan",
  plannedBy: "slab.plan",
  rows,
  coated: ({ finish, prebottom }) => finish === "dipped" || prebottom,
  forWorker: ({ request: _request, ...plan }) => {
    const { melt: _melt, inputs: _inputs, frames: _frames, cool, cut, ...reply } = plan.reply;
    const { curve: _curve, milestones: _milestones, inputs: _coolInputs, ...cooling } = cool;
    const { cuts_along_m: _along, cuts_across_m: _across, ...cutting } = cut;
    return { ...plan, reply: { ...reply, cool: cooling, cut: cutting } };
  },
  piece: ({ reply }) => ({ caramel_kg: reply.cut.piece_kg, under: [] }),
  sheet: {
    // A sheet has boxes for bursts: a batch in a water jacket has none.
    fits: ({ reply }) => reply.melt !== null,
    rows: ({ reply }) => ({ bursts: reply.melt?.bursts.length ?? 0, slab: 2, fills: 0, trays: 0 }),
  },
};
