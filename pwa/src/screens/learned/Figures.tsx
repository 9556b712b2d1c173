import type { Measured, Shop } from "../../documents";
import { t } from "../../text";

interface Figure {
  key: string;
  what: string;
  value: string;
  more: string;
  n: number;
}

/** Every measured figure as one line: what, how much, from how many batches, and what was believed before. */
export function Figures({ measured, shop }: { measured: Measured; shop: Shop }) {
  const groups: [string, Figure[]][] = [
    ["ovens", ovens(measured, shop)],
    ["bases", bases(measured, shop)],
    ["caramels", caramels(measured, shop)],
    ["products", products(measured, shop)],
  ];
  return (
    <>
      {groups.map(([name, figures]) =>
        figures.length === 0 ? null : (
          <section class="card" key={name}>
            <h2>{t(`learned.${name}`)}</h2>
            {figures.map((one) => (
              <div class="figure" key={one.key}>
                <p class="quiet">{one.what}</p>
                <p class="answer">{one.value}</p>
                <p class="quiet">
                  {one.more} {t("learned.from", { n: one.n })}
                </p>
              </div>
            ))}
          </section>
        ),
      )}
    </>
  );
}

function ovens({ ovens: rows }: Measured, shop: Shop): Figure[] {
  return rows.map((row) => {
    const oven = shop.ovens.find((one) => one.id === row.id);
    const plate = oven?.rated_w ?? null;
    return {
      key: `${row.id} ${row.mass_kg}`,
      what: t("learned.oven", { name: oven?.name ?? row.id, low_kg: row.mass_band.low_kg, high_kg: row.mass_band.high_kg }),
      value: t("learned.oven_power", { power_w: row.power_w, low_w: row.power_low_w, high_w: row.power_high_w }),
      more: plate === null ? "" : t("learned.oven_plate", { rated_w: plate, percent: percent(row.power_w / plate) }),
      n: row.n,
    };
  });
}

function bases({ bases: rows }: Measured, shop: Shop): Figure[] {
  return rows.map((row) => ({
    key: row.id,
    what: shop.bases.find((one) => one.id === row.id)?.name ?? row.id,
    value: lossWords(percent(row.loss_factor - 1)),
    more: t("learned.base_sure", { percent: percent(row.loss_factor_sd) }),
    n: row.n,
  }));
}

function caramels({ caramels: rows }: Measured, shop: Shop): Figure[] {
  return rows.map(({ id, ready_c, low_c, high_c, n }) => ({
    key: id,
    what: shop.caramels.find((one) => one.id === id)?.name ?? id,
    value: t("learned.ready", { ready_c }),
    more: t("learned.ready_range", { low_c, high_c }),
    n,
  }));
}

function percent(share: number): number {
  return Math.round(100 * share);
}

/** Per cent to a tenth. */
function tenths(share: number): number {
  return Math.round(1000 * share) / 10;
}

/** Heat loss against the model's, in per cent of it. */
function lossWords(more: number): string {
  if (more === 0) return t("learned.base_same");
  return t(more > 0 ? "learned.base_faster" : "learned.base_slower", { percent: Math.abs(more) });
}

function products({ products: rows, residue }: Measured, shop: Shop): Figure[] {
  const found = rows.flatMap((row): Figure[] => {
    const name = shop.products.find((one) => one.id === row.id)?.name ?? row.id;
    const good = {
      key: `${row.id} good`,
      what: name,
      value: t("learned.good", { percent: percent(row.yield) }),
      more: t("learned.range", { low_percent: percent(row.yield_low), high_percent: percent(row.yield_high) }),
      n: row.n,
    };
    const pickup = row.pickup ? [share(`${row.id} pickup`, name, "learned.pickup", row.pickup)] : [];
    return [...(row.n > 0 ? [good] : []), ...(row.trim ? [share(`${row.id} trim`, name, "learned.trim", row.trim)] : []), ...pickup];
  });
  return residue ? [...found, share("residue", t("learned.bowl"), "learned.residue", residue)] : found;
}

function share(key: string, what: string, text: string, seen: { share: number; share_low: number; share_high: number; n: number }): Figure {
  const more = t("learned.range", { low_percent: tenths(seen.share_low), high_percent: tenths(seen.share_high) });
  return { key, what, value: t(text, { percent: tenths(seen.share) }), more, n: seen.n };
}
