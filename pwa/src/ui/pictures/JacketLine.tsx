import { formatDuration, formatTime, t } from "../../text";
import { type Box, Picture, type Place } from "./Picture";
import { linear, type Scale, timeStep } from "./scale";

/** A melt in a water jacket. Times in s after the block went in; `started_ms` null: it has not yet. */
export interface JacketTimes {
  started_ms: number | null;
  seconds_s: number;
  low_s: number;
  high_s: number;
  looks: { at_s: number; free: boolean }[];
  now_s: number | null;
  poured_s: number | null;
}

/** A line of time: when it may be soft through, the looks taken so far, now or the pouring. */
export function JacketLine({ jacket, place }: { jacket: JacketTimes; place: Place }) {
  return <Picture label={words(jacket)} place={place} ratio={0.34} most={150} least={104} draw={(box) => <Drawing box={box} jacket={jacket} />} />;
}

function when({ started_ms }: JacketTimes, at_s: number): string {
  return started_ms === null ? formatDuration(at_s) : formatTime(started_ms + at_s * 1000);
}

function words(jacket: JacketTimes): string {
  const time = (at_s: number) => when(jacket, at_s);
  const said = [t("picture.jacket_line", { ready: time(jacket.seconds_s), low: time(jacket.low_s), high: time(jacket.high_s) })];
  if (jacket.looks.length > 0) said.push(t("picture.jacket_looks", { n: jacket.looks.length }));
  if (jacket.poured_s !== null) said.push(t("picture.jacket_poured", { took_s: jacket.poured_s }));
  return said.join(" ");
}

function Drawing({ box, jacket }: { box: Box; jacket: JacketTimes }) {
  const { letter } = box;
  // A line needs no more height: it stands in the middle of what there is.
  const height = Math.min(box.height, letter * 6.5);
  const end_s = Math.max(jacket.high_s, jacket.now_s ?? 0, jacket.poured_s ?? 0) * 1.06;
  const x = linear([0, end_s], [4, box.width - 6]);
  const bottom = height - letter * 1.6;
  const y = Math.max(letter * 2.2, (letter + bottom) / 2);
  const gone_s = jacket.poured_s ?? jacket.now_s;
  return (
    <g font-size={letter} transform={`translate(0 ${(box.height - height) / 2})`}>
      <Axis jacket={jacket} box={box} x={x} end_s={end_s} bottom={bottom} />
      <path d={`M${x(0)} ${y}H${x(end_s)}`} class="line-grid" />
      {gone_s !== null && <path d={`M${x(0)} ${y}H${x(gone_s)}`} class="line-now" />}
      <rect x={x(jacket.low_s)} y={y - 7} width={Math.max(8, x(jacket.high_s) - x(jacket.low_s))} height={14} rx={7} class="ready-bar" />
      <path d={`M${x(jacket.seconds_s)} ${y - 11}v22`} class="line-ready" />
      <text x={x(jacket.high_s)} y={y - letter * 0.8} text-anchor="end" class="ink-now">
        {t("picture.soft_through")}
      </text>
      {jacket.looks.map((one) => (
        <rect key={one.at_s} x={x(one.at_s) - 7} y={y - 7} width={14} height={14} class={one.free ? "touch-firm" : "touch-soft"} />
      ))}
      {gone_s !== null && <Mark x={x(gone_s)} top={y} bottom={bottom} right={gone_s < end_s / 2} letter={letter} poured={jacket.poured_s !== null} />}
    </g>
  );
}

interface AxisProps {
  jacket: JacketTimes;
  box: Box;
  x: Scale;
  end_s: number;
  bottom: number;
}

function Axis({ jacket, box, x, end_s, bottom }: AxisProps) {
  const step = timeStep(end_s, Math.max(2, Math.floor(box.width / (box.letter * 5.5))));
  const times: number[] = [];
  for (let at_s = 0; at_s <= end_s; at_s += step) times.push(at_s);
  const anchor = (at_s: number) => (at_s === 0 ? "start" : x(at_s) > box.width - box.letter * 2 ? "end" : "middle");
  return (
    <g class="ink-soft">
      <path d={`M${x(0)} ${bottom}H${x(end_s)}`} class="line-axis" />
      {times.map((at_s) => (
        <g key={at_s}>
          <path d={`M${x(at_s)} ${bottom}v5`} class="line-axis" />
          <text x={x(at_s)} y={bottom + box.letter * 1.45} text-anchor={anchor(at_s)}>
            {when(jacket, at_s)}
          </text>
        </g>
      ))}
    </g>
  );
}

interface MarkProps {
  x: number;
  top: number;
  bottom: number;
  right: boolean;
  letter: number;
  poured: boolean;
}

/** Now, or the moment of pouring. */
function Mark({ x, top, bottom, right, letter, poured }: MarkProps) {
  return (
    <g class="ink-now">
      <path d={`M${x} ${top - letter * 0.6}V${bottom}`} class="line-now" />
      <text x={right ? x + 7 : x - 7} y={bottom - letter * 0.4} text-anchor={right ? "start" : "end"}>
        {t(poured ? "event.poured" : "picture.now")}
      </text>
    </g>
  );
}
