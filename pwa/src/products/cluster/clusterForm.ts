import type { BasisByField, ClusterPlanRequest, Dip, Funnel, ProductRow, Row, Shop, Under } from "../../documents";
import type { PlannedCluster, PlanParts } from "../../state";
import { dipOrigins, dipRequest } from "../shared/dip";
import { bowlRequest, caramelBasis, caramelOf, HEAT_LINES, NO_OLD_CARAMEL, type OldCaramel, ovenRequest, sharedOrigins } from "../shared/meltRequest";
import { withoutEmpty, sameNamed } from "../shared/request";

/** Clusters of one size of first deposit. The id tells rows apart on the screen. */
export interface Size {
  id: number;
  clusters: number | null;
  deposit_kg: number | null;
}

/** What the person has said of clusters, in SI; null: nothing typed. */
export interface ClusterForm extends OldCaramel {
  product_id: string;
  by: "pieces" | "kg";
  kg: number | null;
  /** In laying order; of caramel in hand only the first deposit counts. */
  sizes: Size[];
  second_kg: number | null;
  spread_m: number | null;
  gap_m: number | null;
  tray_id: string;
  funnel_id: string;
  oven_id: string;
  vessel_id: string;
  lot: string;
  room_c: number | null;
  humidity: number | null;
  start_c: number | null;
  /** Fields the person has typed in themselves. */
  typed: string[];
}

const START_PIECES = 60;
const START_KG = 1;
const SIZES = ["second_kg", "spread_m", "gap_m"] as const;
/** The most sizes a plan takes. */
export const MOST_SIZES = 20;

export function firstClusters(shop: Shop, product: ProductRow): ClusterForm {
  const blank: ClusterForm = {
    product_id: product.id,
    by: "pieces",
    kg: START_KG,
    sizes: [{ id: 0, clusters: START_PIECES, deposit_kg: null }],
    second_kg: null,
    spread_m: null,
    gap_m: null,
    tray_id: shop.trays[0]?.id ?? "",
    funnel_id: shop.funnels[0]?.id ?? "",
    oven_id: shop.ovens[0]?.id ?? "",
    vessel_id: shop.vessels.find((one) => !one.jacketed)?.id ?? "",
    lot: "",
    ...NO_OLD_CARAMEL,
    room_c: shop.room_c,
    humidity: shop.humidity ?? null,
    start_c: shop.room_c,
    typed: [],
  };
  return withClusters(blank, product);
}

/** The sizes with one more, at first like the last. */
export function withAnotherSize(sizes: Size[]): Size[] {
  const id = 1 + Math.max(...sizes.map((size) => size.id));
  return [...sizes, ...sizes.slice(-1).map((size) => ({ ...size, id }))];
}

/** The form with the sizes of a product; what was typed about sizes gives way to it. */
export function withClusters(form: ClusterForm, { id, cluster }: ProductRow): ClusterForm {
  const own = Object.fromEntries(SIZES.map((name) => [name, cluster[name]]));
  const sizes = form.sizes.slice(0, 1).map((size) => ({ ...size, deposit_kg: cluster.deposit_kg }));
  return { ...form, ...own, sizes, product_id: id, typed: form.typed.filter((name) => !SIZES.includes(name as (typeof SIZES)[number])) };
}

export function clusterParts(form: ClusterForm, shop: Shop): PlanParts {
  const caramel = caramelOf(shop.products.find((one) => one.id === form.product_id), shop);
  return { oven_id: form.oven_id || null, base_id: null, product_id: form.product_id, caramel_id: caramel?.id ?? null };
}

/** The request to cluster.plan. Fields left empty are left out, so that the engine names what is missing. */
export function clusterRequest(form: ClusterForm, shop: Shop): ClusterPlanRequest {
  const product = shop.products.find((one) => one.id === form.product_id);
  const caramel = caramelOf(product, shop);
  const tray = shop.trays.find((one) => one.id === form.tray_id);
  const funnel = shop.funnels.find((one) => one.id === form.funnel_id);
  const window = caramel?.windows["deposit"];
  const { second_kg, spread_m, gap_m, room_c, humidity, start_c } = form;
  return withoutEmpty<ClusterPlanRequest>({
    ...(form.by === "pieces" ? { rows: form.sizes.map(({ clusters, deposit_kg }) => withoutEmpty<Row>({ clusters, deposit_kg })) } : { caramel_kg: form.kg, deposit_kg: form.sizes[0]?.deposit_kg }),
    second_kg: second_kg ?? 0,
    ...underOf(product),
    dip: dipOf(product, shop),
    tray: tray && withoutEmpty<ClusterPlanRequest["tray"]>({ length_m: tray.length_m, width_m: tray.width_m, rim_m: tray.rim_m }),
    spread_m,
    gap_m,
    funnel: funnel && withoutEmpty<Funnel>({ volume_m3: funnel.volume_m3, fill: funnel.fill }),
    deposits_per_min: funnel?.deposits_per_min,
    ...ovenRequest(form, shop),
    ...bowlRequest(form, shop, caramel),
    window_low_c: window?.low_c,
    window_high_c: window?.high_c,
    limit_c: caramel?.limit_c,
    warn_c: caramel?.warn_c,
    stop_c: caramel?.stop_c,
    room_c,
    target_c: caramel?.target_c,
    fridge_c: shop.fridge_c,
    humidity,
    start_c,
    material: caramel?.material,
    block_kg: caramel?.block_kg,
    firmness: caramel?.firmness,
    squeeze: caramel?.squeeze,
    basis: basisOf(form, shop),
  });
}

/** What a product plans of a cluster, as cluster.learn asks for it. */
export function learnRequest(product: ProductRow, shop: Shop): PlannedCluster {
  const { deposit_kg, second_kg, spread_m } = product.cluster;
  return withoutEmpty<PlannedCluster>({ deposit_kg, second_kg, spread_m, ...underOf(product), material: caramelOf(product, shop)?.material });
}

/** The part of the request about dipping. It rests on the weighed pick-up: a cluster has no sides to measure. */
function dipOf(product: ProductRow | undefined, shop: Shop): Dip | undefined {
  const { thickness_m: _thickness, pocket_m: _pocket, ...dip } = dipRequest(product, shop) ?? {};
  return product?.finish === "dipped" ? dip : undefined;
}

/** What lies under the caramel: counted out, or a level bed of the same kinds by their weights. */
function underOf(product: ProductRow | undefined): Pick<ClusterPlanRequest, "under" | "bed"> {
  if (!product) return {};
  const { under, under_each_kg, under_count, also, also_each_kg, also_count, bed_kg_m2 } = product.cluster;
  const kinds = [
    { material: under, kg_each: under_each_kg, count: under_count },
    { material: also, kg_each: also_each_kg, count: also_count },
  ].flatMap(({ material, ...one }) => (material === null ? [] : [{ material, ...one }]));
  if (kinds.length === 0) return {};
  if (bed_kg_m2 === null) return { under: kinds.map((one) => withoutEmpty<Under>(one)) };
  const weights = kinds.map((one) => (one.kg_each ?? 0) * one.count);
  const all = weights.reduce((sum, one) => sum + one, 0);
  const share = (index: number) => (all > 0 ? (weights[index] ?? 0) / all : 1 / kinds.length);
  return { bed: { bed_kg_m2, materials: kinds.map(({ material }, index) => ({ material, share: share(index) })) } };
}

/** Where in the shop the weights of what lies under stand, by their place in the request. */
function underOrigins(product: ProductRow | undefined): Record<string, string> {
  if (!product) return {};
  const at = (name: string) => `products/${product.id}.cluster.${name}`;
  const kinds = (["under", "also"] as const).filter((one) => product.cluster[one] !== null);
  const counted = kinds.flatMap((one, index) => [[`under[${index}].kg_each`, at(`${one}_each_kg`)], [`under[${index}].count`, at(`${one}_count`)]]);
  return { "bed.bed_kg_m2": at("bed_kg_m2"), ...Object.fromEntries(counted) };
}

/** The basis of what came from the shop and was not typed over. */
function basisOf(form: ClusterForm, shop: Shop): BasisByField {
  const product = shop.products.find((one) => one.id === form.product_id);
  const caramel = caramelOf(product, shop);
  const origins: Record<string, string> = {
    ...sharedOrigins(form, caramel),
    ...dipOrigins(product),
    ...sameNamed(`products/${form.product_id}.cluster`, SIZES),
    ...sameNamed(`trays/${form.tray_id}`, ["length_m", "width_m", "rim_m"], "tray."),
    ...sameNamed(`funnels/${form.funnel_id}`, ["volume_m3", "fill"], "funnel."),
    ...sameNamed(`funnels/${form.funnel_id}`, ["deposits_per_min"]),
    ...underOrigins(product),
    window_low_c: `caramels/${caramel?.id}.windows.deposit.low_c`,
    window_high_c: `caramels/${caramel?.id}.windows.deposit.high_c`,
    ...sameNamed(`caramels/${caramel?.id}`, [...HEAT_LINES, "target_c"]),
  };
  const found: [string, BasisByField[string]][] = Object.entries(origins).flatMap(([here, there]) => {
    const basis = shop.basis[there] ?? (here.startsWith("window") ? "assumed" : undefined);
    return basis && !form.typed.includes(here) ? [[here, basis]] : [];
  });
  // A deposit as the product has it rests on what that rests on.
  const own = shop.basis[`products/${form.product_id}.cluster.deposit_kg`];
  const where = (index: number) => (form.by === "pieces" ? `rows[${index}].deposit_kg` : "deposit_kg");
  if (own) form.sizes.forEach((size, index) => size.deposit_kg === product?.cluster.deposit_kg && found.push([where(index), own]));
  return { ...Object.fromEntries(found), ...(form.typed.includes("start_c") ? {} : { start_c: "assumed" as const }), ...caramelBasis(caramel, shop) };
}
