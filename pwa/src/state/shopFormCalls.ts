/** The engine calls of the shop's forms, made before anything is written. */
import type { ShopList, Units, Values } from "../documents";
import { compute } from "../engine/client";
import type { ClusterLearnReply, ClusterLearnRequest, FlowStandUpTestRequest } from "../engine/types";

/** A row of a list, whatever its fields. */
export type ShopRow = Values & { id: string };

/** Refuses values that the engine would pass over. Throws EngineProblem named after the field. */
export async function checkRow(doc: string, values: Values): Promise<void> {
  await compute("shop.check", { doc, values }, "desk");
}

/** A new row with the values assumed for it, round figures in the shop's degrees, and the basis of each. */
export async function emptyRow(list: ShopList, { temperature }: Units): Promise<{ row: ShopRow; basis: Record<string, string> }> {
  const said = [{ doc: "shop", field: "units.temperature", value: temperature }, { doc: `${list}/new`, field: "removed", value: false }];
  const events = said.map((one, seq) => ({
    id: `new-${seq}`, v: 1, shop_id: "", device_id: "", seq, at_ms: 0, offset_ms: 0, batch_id: null, kind: "shop_set",
    body: { ...one, basis: "typed" },
  }));
  const { shop } = await compute("shop.fold", { shop_id: "", events }, "desk");
  const folded = shop as Record<ShopList, ShopRow[]> & { basis: Record<string, string> };
  return { row: folded[list][0] ?? { id: "new" }, basis: folded.basis };
}

/** kg/m³ from a weighed volume. Throws EngineProblem. */
export async function densityOf(mass_kg: number, volume_m3: number): Promise<number> {
  return (await compute("shop.density", { mass_kg, volume_m3 }, "desk")).density_kg_m3;
}

/** What an oven gives to water, in W, and its standard deviation. Throws EngineProblem. */
export async function ovenPowerOf(test: { water_kg: number; start_c: number; end_c: number; seconds_s: number }) {
  return compute("melt.oven_from_water_test", test, "desk");
}

/** By how many K a cube that stood is stiffer than its water says; null: nothing is known of that. Throws EngineProblem. */
export async function stiffnessOf(cube: FlowStandUpTestRequest): Promise<number | null> {
  return (await compute("flow.stand_up_test", cube, "desk")).stiffer_k;
}

export type FunnelLesson = ClusterLearnReply;
/** What was planned of clusters that are weighed. */
export type PlannedCluster = Omit<ClusterLearnRequest, "clusters" | "together_kg" | "under_kg" | "across_m">;

/** Grams a deposit and its width, from weighed and measured clusters. Throws EngineProblem. */
export async function learnFunnel(weighed: ClusterLearnRequest): Promise<FunnelLesson> {
  return compute("cluster.learn", weighed, "desk");
}
