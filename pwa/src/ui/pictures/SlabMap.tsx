import { useId } from "preact/hooks";

import { figure, format, reader, t } from "../../text";
import { type Box, Hatch, Picture, type Place } from "./Picture";
import { linear } from "./scale";

/** The frame from above. Cuts are distances (m) from the datum corner: `along` run along the length, `across` across it. */
export interface Slab {
  length_m: number;
  width_m: number;
  along_m: number[];
  across_m: number[];
  rows: number;
  columns: number;
}

export function SlabMap({ slab, place }: { slab: Slab; place: Place }) {
  const words = t("picture.slab", {
    rows: slab.rows,
    columns: slab.columns,
    length_m: slab.length_m,
    width_m: slab.width_m,
    first_m: slab.across_m[0] ?? 0,
  });
  const ratio = Math.min(1.1, Math.max(0.45, slab.width_m / slab.length_m));
  return <Picture label={words} place={place} ratio={ratio} most={460} draw={(box) => <Drawing box={box} slab={slab} />} />;
}

function Drawing({ box, slab }: { box: Box; slab: Slab }) {
  const id = useId();
  const labelled = (cuts: number[]) => box.letter * 0.62 * Math.max(...cuts.map((cut) => cutText(cut).length)) + 12;
  const margin = { left: Math.max(box.letter * 2.9, labelled(slab.along_m)), top: Math.max(box.letter * 3, labelled(slab.across_m)), right: 8, bottom: 8 };
  const room = { width: box.width - margin.left - margin.right, height: box.height - margin.top - margin.bottom };
  const per_m = Math.min(room.width / slab.length_m, room.height / slab.width_m);
  const [width, height] = [slab.length_m * per_m, slab.width_m * per_m];
  const left = margin.left + (room.width - width) / 2;
  const top = margin.top;
  const x = linear([0, slab.length_m], [left, left + width]);
  const y = linear([0, slab.width_m], [top, top + height]);
  const [x0, x1] = [x(slab.across_m[0] ?? 0), x(slab.across_m.at(-1) ?? slab.length_m)];
  const [y0, y1] = [y(slab.along_m[0] ?? 0), y(slab.along_m.at(-1) ?? slab.width_m)];
  return (
    <g font-size={box.letter}>
      <defs>
        <Hatch id={`${id}-t`} gap={6} line="line-trim" />
      </defs>
      <rect x={left} y={top} width={width} height={height} class="slab" />
      <rect x={left} y={top} width={width} height={height} fill={`url(#${id}-t)`} />
      <rect x={x0} y={y0} width={x1 - x0} height={y1 - y0} class="slab" />
      {slab.across_m.map((cut) => (
        <path key={cut} d={`M${x(cut)} ${top - 4}V${y1}`} class="line-cut" />
      ))}
      {slab.along_m.map((cut) => (
        <path key={cut} d={`M${left - 4} ${y(cut)}H${x1}`} class="line-cut" />
      ))}
      <path d={`M${left} ${top + height}V${top}H${left + width}`} class="line-datum" />
      <circle cx={left} cy={top} r={6} class="datum" />
      <AcrossLabels cuts={slab.across_m} at={x} y={top - 8} letter={box.letter} />
      <AlongLabels cuts={slab.along_m} at={y} x={left - 8} letter={box.letter} />
    </g>
  );
}

/** A cut line's distance: a knife keeps to whole millimetres, and one list keeps to one precision. */
function cutText(cut: number): string {
  return figure("cut_m", reader.value.units.length === "mm" ? Math.round(cut * 1000) / 1000 : cut).text;
}

/** Only as many labels as keep clear of each other; the list beside the map has every line. */
function shown(cuts: number[], at: (cut: number) => number, least: number): number[] {
  const kept: number[] = [];
  const last = cuts.at(-1);
  for (const cut of cuts) {
    const clear = kept.every((one) => Math.abs(at(one) - at(cut)) >= least);
    const clearOfLast = last === undefined || cut === last || Math.abs(at(last) - at(cut)) >= least;
    if (clear && clearOfLast) kept.push(cut);
  }
  return kept;
}

interface LabelProps {
  cuts: number[];
  at: (cut: number) => number;
  letter: number;
}

function AcrossLabels({ cuts, at, y, letter }: LabelProps & { y: number }) {
  return (
    <g class="ink">
      {shown(cuts, at, letter * 1.1).map((cut) => (
        <text key={cut} transform={`translate(${at(cut) + letter * 0.36} ${y}) rotate(-90)`}>
          {cutText(cut)}
        </text>
      ))}
    </g>
  );
}

function AlongLabels({ cuts, at, x, letter }: LabelProps & { x: number }) {
  return (
    <g class="ink" text-anchor="end">
      {shown(cuts, at, letter * 1.1).map((cut) => (
        <text key={cut} x={x} y={at(cut) + letter * 0.36}>
          {cutText(cut)}
        </text>
      ))}
    </g>
  );
}

/** Every line's distance from its datum edge, to set a ruler or roller by. */
export function CutList({ slab }: { slab: Slab }) {
  const unit = figure("cut_m", slab.length_m).unit;
  return (
    <dl class="cuts">
      <dt>{t("picture.cuts_across", { unit })}</dt>
      <dd>{slab.across_m.map((cut) => <span key={cut}>{cutText(cut)}</span>)}</dd>
      <dt>{t("picture.cuts_along", { unit })}</dt>
      <dd>{slab.along_m.map((cut) => <span key={cut}>{cutText(cut)}</span>)}</dd>
      <dt>{t("picture.frame")}</dt>
      <dd>
        {format("length_m", slab.length_m)} × {format("width_m", slab.width_m)}
      </dd>
    </dl>
  );
}
