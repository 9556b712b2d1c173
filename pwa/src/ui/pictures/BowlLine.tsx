import type { BowlState } from "../../documents";
import { formatRange, formatTime, t } from "../../text";
import { Degrees } from "./Degrees";
import { type Box, Picture, type Place } from "./Picture";
import { linear, path, type Scale, timeStep } from "./scale";

/** The readings over time, the two ranges that count as bands, seed, warming and strips as marks. */
export function BowlLine({ bowl, place }: { bowl: BowlState; place: Place }) {
  return <Picture label={words(bowl)} place={place} ratio={0.62} most={340} draw={(box) => <Drawing box={box} bowl={bowl} />} />;
}

function words({ line, readings, strips }: BowlState): string {
  const range = formatRange("bowl_c", line.work_low_c, line.work_high_c);
  const last = readings.at(-1);
  const said = [t("picture.bowl_range", { range })];
  if (last) said.push(t("picture.bowl_readings", { n: readings.length, bowl_c: last.bowl_c }));
  if (strips.length > 0) said.push(t("picture.bowl_strips", { n: strips.length, good: strips.filter((one) => one.good).length }));
  return said.join(" ");
}

interface Axes {
  x: Scale;
  y: Scale;
  left: number;
  right: number;
  top: number;
  bottom: number;
  from_ms: number;
  to_ms: number;
  low_c: number;
  high_c: number;
}

function axes(box: Box, { line, readings, seeds, warmed, strips }: BowlState): Axes {
  const times = [readings, seeds, warmed, strips].flatMap((list) => list.map((one) => one.at_ms));
  const [from_ms, last_ms] = [Math.min(...times), Math.max(...times)];
  // A minute at least, and room behind the last mark.
  const to_ms = from_ms + Math.max(60_000, (last_ms - from_ms) * 1.06);
  const read = readings.map((one) => one.bowl_c);
  const [low_c, high_c] = [Math.min(line.work_low_c - 2, ...read), Math.max(line.melt_high_c, ...read)];
  const [left, right] = [box.letter * 2.1, box.width - 6];
  const [top, bottom] = [box.letter * 0.6, box.height - box.letter * 2.2];
  const [x, y] = [linear([from_ms, to_ms], [left + 8, right]), linear([low_c, high_c], [bottom, top])];
  return { x, y, left, right, top, bottom, from_ms, to_ms, low_c, high_c };
}

function Drawing({ box, bowl }: { box: Box; bowl: BowlState }) {
  const plot = axes(box, bowl);
  const { line, readings } = bowl;
  return (
    <g font-size={box.letter}>
      <Grid box={box} plot={plot} />
      <Band plot={plot} letter={box.letter} low_c={line.melt_low_c} high_c={line.melt_high_c} label={t("picture.bowl_melt")} />
      <Band plot={plot} letter={box.letter} low_c={line.work_low_c} high_c={line.work_high_c} label={t("picture.bowl_work")} />
      <path d={path(readings.map((one) => [plot.x(one.at_ms), plot.y(one.bowl_c)]))} class="line-core" />
      {readings.map((one) => (
        <circle key={one.at_ms} cx={plot.x(one.at_ms)} cy={plot.y(one.bowl_c)} r={5} class="dot" />
      ))}
      <Marks bowl={bowl} plot={plot} />
    </g>
  );
}

/** A range that counts, from edge to edge; its name stands above it, where the readings have left it. */
function Band({ plot, letter, low_c, high_c, label }: { plot: Axes; letter: number; low_c: number; high_c: number; label: string }) {
  const [top, bottom] = [plot.y(high_c), plot.y(low_c)];
  return (
    <g>
      <rect x={plot.left} y={top} width={plot.right - plot.left} height={Math.max(3, bottom - top)} class="band" />
      <path d={`M${plot.left} ${top}H${plot.right}M${plot.left} ${bottom}H${plot.right}`} class="line-target" />
      <text x={plot.right - 4} y={bottom - top > letter * 1.5 ? top + letter * 1.2 : top - letter * 0.4} text-anchor="end" class="ink-now">
        {label}
      </text>
    </g>
  );
}

/** On the axis: seed as a diamond, warming as a tick upwards, a strip full when it was good. */
function Marks({ bowl, plot }: { bowl: BowlState; plot: Axes }) {
  const y = plot.bottom;
  return (
    <g>
      {bowl.warmed.map((one) => (
        <path key={one.at_ms} d={`M${plot.x(one.at_ms)} ${y}v-16m-5 6l5 -6l5 6`} class="line-warmed" />
      ))}
      {bowl.seeds.map((one) => (
        <rect key={one.at_ms} x={plot.x(one.at_ms) - 5} y={y - 5} width={10} height={10} transform={`rotate(45 ${plot.x(one.at_ms)} ${y})`} class="milestone" />
      ))}
      {bowl.strips.map((one) => (
        <rect key={one.at_ms} x={plot.x(one.at_ms) - 6} y={y - 6} width={12} height={12} class={one.good ? "touch-firm" : "touch-soft"} />
      ))}
    </g>
  );
}

function Grid({ box, plot }: { box: Box; plot: Axes }) {
  const step_ms = 1000 * timeStep((plot.to_ms - plot.from_ms) / 1000, Math.max(2, Math.floor((plot.right - plot.left) / (box.letter * 5))));
  const times: number[] = [];
  for (let at_ms = Math.ceil(plot.from_ms / step_ms) * step_ms; at_ms <= plot.to_ms; at_ms += step_ms) times.push(at_ms);
  return (
    <g class="ink-soft">
      <Degrees low_c={plot.low_c} high_c={plot.high_c} most={5} plot={plot} letter={box.letter} />
      {times.map((at_ms) => (
        <g key={at_ms}>
          <path d={`M${plot.x(at_ms)} ${plot.bottom}v5`} class="line-axis" />
          <text x={plot.x(at_ms)} y={box.height - 4} text-anchor={plot.x(at_ms) > plot.right - box.letter * 2 ? "end" : "middle"}>
            {formatTime(at_ms)}
          </text>
        </g>
      ))}
      <path d={`M${plot.left} ${plot.bottom}H${plot.right}`} class="line-axis" />
    </g>
  );
}
