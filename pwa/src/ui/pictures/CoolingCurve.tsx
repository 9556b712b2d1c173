import { format, formatDuration, formatTime, t } from "../../text";
import { Degrees } from "./Degrees";
import { type Box, Picture, type Place } from "./Picture";
import { linear, path, type Scale, timeStep } from "./scale";

/** Times in s after pouring. `poured_ms` (a corrected instant) turns the axis into times of day. */
export interface Cooling {
  curve: { at_s: number; core_c: number; surface_c: number }[];
  milestones: { name: string; at_s: number }[];
  readings: { at_s: number; surface_c: number }[];
  touches: { at_s: number; firm: boolean }[];
  target_c: number;
  ready_s: number;
  ready_low_s: number;
  ready_high_s: number;
  poured_ms: number | null;
  now_s: number | null;
}

export function CoolingCurve({ cooling, place }: { cooling: Cooling; place: Place }) {
  return <Picture label={words(cooling)} place={place} ratio={0.62} most={360} least={240} draw={(box) => <Drawing box={box} cooling={cooling} />} />;
}

function when(cooling: Cooling, at_s: number): string {
  return cooling.poured_ms === null ? formatDuration(at_s) : formatTime(cooling.poured_ms + at_s * 1000);
}

function words(cooling: Cooling): string {
  const now = cooling.now_s === null ? null : at(cooling.curve, cooling.now_s);
  const ready = t("picture.curve_ready", {
    target_c: cooling.target_c,
    ready: when(cooling, cooling.ready_s),
    low: when(cooling, cooling.ready_low_s),
    high: when(cooling, cooling.ready_high_s),
  });
  return now === null ? ready : `${t("picture.curve_now", { core_c: now })} ${ready}`;
}

/** The core temperature at a time, straight between the points; null outside the curve. */
function at(curve: Cooling["curve"], at_s: number): number | null {
  const after = curve.findIndex((point) => point.at_s >= at_s);
  const [left, right] = [curve[after - 1], curve[after]];
  if (!right) return null;
  if (!left) return right.core_c;
  return linear([left.at_s, right.at_s], [left.core_c, right.core_c])(at_s);
}

interface Axes {
  x: Scale;
  y: Scale;
  left: number;
  right: number;
  top: number;
  bottom: number;
  end_s: number;
}

function axes(box: Box, cooling: Cooling): Axes {
  const end_s = Math.max(cooling.ready_high_s * 1.1, (cooling.now_s ?? 0) * 1.05);
  const shown = cooling.curve.filter((point) => point.at_s <= end_s);
  const hottest = Math.max(...shown.map((point) => point.core_c), ...cooling.readings.map((one) => one.surface_c));
  const coldest = Math.min(cooling.target_c - 4, ...shown.map((point) => point.surface_c));
  const [left, right] = [box.letter * 2.1, box.width - 6];
  const [top, bottom] = [box.letter * 1.3, box.height - box.letter * 1.6];
  return { x: linear([0, end_s], [left, right]), y: linear([coldest, hottest], [bottom, top]), left, right, top, bottom, end_s };
}

function Drawing({ box, cooling }: { box: Box; cooling: Cooling }) {
  const plot = axes(box, cooling);
  const points = cooling.curve.filter((point) => point.at_s <= plot.end_s);
  return (
    <g font-size={box.letter}>
      <Grid box={box} cooling={cooling} plot={plot} />
      <path d={path(points.map((one) => [plot.x(one.at_s), plot.y(one.surface_c)]))} class="line-surface" />
      <path d={path(points.map((one) => [plot.x(one.at_s), plot.y(one.core_c)]))} class="line-core" />
      <Target box={box} cooling={cooling} plot={plot} />
      {box.place === "desk" && <Milestones cooling={cooling} plot={plot} letter={box.letter} />}
      {cooling.readings.map((one) => (
        <circle key={one.at_s} cx={plot.x(one.at_s)} cy={Math.min(plot.y(one.surface_c), plot.bottom)} r={6} class="dot" />
      ))}
      {cooling.touches.map((one) => (
        <Touch key={one.at_s} x={plot.x(one.at_s)} y={plot.bottom} firm={one.firm} />
      ))}
      {cooling.now_s !== null && <Now plot={plot} x={plot.x(Math.min(cooling.now_s, plot.end_s))} letter={box.letter} />}
    </g>
  );
}

function Grid({ box, cooling, plot }: { box: Box; cooling: Cooling; plot: Axes }) {
  const [coldest, hottest] = [figureAt(plot, plot.bottom), figureAt(plot, plot.top)];
  const step = timeStep(plot.end_s, Math.max(1, Math.floor((plot.right - plot.left) / (box.letter * 6.5))));
  const times: number[] = [];
  for (let at_s = 0; at_s <= plot.end_s; at_s += step) times.push(at_s);
  return (
    <g class="ink-soft">
      <Degrees low_c={coldest} high_c={hottest} most={box.place === "bench" ? 3 : 5} plot={plot} letter={box.letter} />
      {times.map((at_s, index) => (
        <g key={at_s}>
          <path d={`M${plot.x(at_s)} ${plot.bottom}v5`} class="line-axis" />
          <text x={plot.x(at_s)} y={box.height - 3} text-anchor={index === 0 ? "start" : anchor(plot, plot.x(at_s), box.letter)}>
            {when(cooling, at_s)}
          </text>
        </g>
      ))}
      <path d={`M${plot.left} ${plot.bottom}H${plot.right}`} class="line-axis" />
    </g>
  );
}

function anchor(plot: Axes, x: number, letter: number) {
  return x > plot.right - letter * 2 ? "end" : "middle";
}

function figureAt(plot: Axes, pixel: number): number {
  const [zero, one] = [plot.y(0), plot.y(1)];
  return (pixel - zero) / (one - zero);
}

/** The target as a dashed level, the time it is reached as a bar from its 10 % to its 90 % point. */
function Target({ box, cooling, plot }: { box: Box; cooling: Cooling; plot: Axes }) {
  const y = plot.y(cooling.target_c);
  const [low, high] = [plot.x(cooling.ready_low_s), Math.min(plot.right, plot.x(cooling.ready_high_s))];
  return (
    <g>
      <path d={`M${plot.left} ${y}H${plot.right}`} class="line-target" />
      <rect x={low} y={y - 7} width={Math.max(8, high - low)} height={14} rx={7} class="ready-bar" />
      <path d={`M${plot.x(cooling.ready_s)} ${y - 11}v22`} class="line-ready" />
      <text x={high} y={y - 14} text-anchor="end" class="ink-now">
        {box.place === "bench" ? format("target_c", cooling.target_c) : t("picture.ready_at", { target_c: cooling.target_c })}
      </text>
    </g>
  );
}

function Milestones({ cooling, plot, letter }: { cooling: Cooling; plot: Axes; letter: number }) {
  const marks = cooling.milestones.filter((one) => one.name !== "ready" && one.at_s > 0 && one.at_s <= plot.end_s);
  return (
    <g class="ink">
      {marks.map((one) => {
        const [x, y] = [plot.x(one.at_s), plot.y(at(cooling.curve, one.at_s) ?? cooling.target_c)];
        const words = t(`milestone.${one.name}`);
        const left = x + 8 + letter * 0.6 * words.length > plot.right;
        // What stands at the level of the target has its words above the target's own.
        const rise = plot.y(cooling.target_c) - y < letter * 2 ? 1.8 : 0.5;
        return (
          <g key={one.name}>
            <path d={`M${x} ${y}l0 -6`} class="line-axis" />
            <rect x={x - 4} y={y - 4} width={8} height={8} transform={`rotate(45 ${x} ${y})`} class="milestone" />
            <text x={left ? x - 8 : x + 8} y={y - letter * rise} text-anchor={left ? "end" : "start"}>
              {words}
            </text>
          </g>
        );
      })}
    </g>
  );
}

/** A touch test on the axis: a full square for firm, an open one for not yet. */
function Touch({ x, y, firm }: { x: number; y: number; firm: boolean }) {
  return <rect x={x - 6} y={y - 6} width={12} height={12} class={firm ? "touch-firm" : "touch-soft"} />;
}

function Now({ plot, x, letter }: { plot: Axes; x: number; letter: number }) {
  const right = x < (plot.left + plot.right) / 2;
  return (
    <g class="ink-now">
      <path d={`M${x} ${plot.top - 4}V${plot.bottom}`} class="line-now" />
      <text x={right ? x + 7 : x - 7} y={plot.top + letter * 0.5} text-anchor={right ? "start" : "end"}>
        {t("picture.now")}
      </text>
    </g>
  );
}
