import { useId } from "preact/hooks";

import { figure, format, formatRange, t } from "../../text";
import { type Box, Hatch, Picture, type Place } from "./Picture";
import { linear, type Scale } from "./scale";

/** One burst: from where it began to where it ended. `next` and `planned` rungs carry a range of their end. */
export interface Rung {
  state: "done" | "next" | "planned";
  from_c: number;
  to_c: number;
  low_c: number | null;
  high_c: number | null;
  reading_c: number | null;
  seconds_s: number;
  /** Power level in %; nothing where it is full power. */
  level_percent?: number;
}
export interface Ladder {
  rungs: Rung[];
  low_c: number;
  high_c: number;
  limit_c: number;
}

/** Temperature runs to the right; each burst is a rung above the last; the window is a hatched column, the limit a rail. */
export function BurstLadder({ ladder, place }: { ladder: Ladder; place: Place }) {
  const ratio = Math.min(0.9, 0.24 + 0.075 * ladder.rungs.length);
  return (
    <Picture
      label={ladderWords(ladder)}
      place={place}
      ratio={ratio}
      most={80 + 36 * ladder.rungs.length}
      least={50 + 20 * ladder.rungs.length}
      draw={(box) => <Drawing box={box} ladder={ladder} />}
    />
  );
}

function ladderWords({ rungs, low_c, high_c, limit_c }: Ladder): string {
  const done = rungs.filter((rung) => rung.state === "done");
  const ends = done.map((rung) => format("end_c", rung.reading_c ?? rung.to_c)).join(", ");
  const open = rungs.find((rung) => rung.state !== "done");
  const parts = [
    done.length ? t("picture.ladder_done", { n: done.length, ends }) : "",
    open && done.length ? t("picture.ladder_next", { end_c: open.to_c }) : "",
    done.length ? "" : t("picture.ladder_plan", { n: rungs.length, ends: rungs.map((one) => format("end_c", one.to_c)).join(", ") }),
    t("picture.ladder_lines", { low_c, high_c, limit_c }),
  ];
  return parts.filter(Boolean).join(" ");
}

function Drawing({ box, ladder }: { box: Box; ladder: Ladder }) {
  const id = useId();
  const { rungs, limit_c } = ladder;
  const foot = box.letter * 1.7;
  const head = box.place === "bench" ? 4 : box.letter * 1.5;
  const gutter = box.place === "bench" ? 10 : 52;
  const coldest = Math.min(...rungs.map((rung) => rung.from_c), ladder.low_c - 30);
  const hottest = Math.max(limit_c, ...rungs.flatMap((rung) => [rung.high_c ?? rung.to_c, rung.to_c]));
  const x = linear([coldest, hottest], [gutter, box.width - box.letter * 1.1]);
  const pitch = (box.height - foot - head) / Math.max(1, rungs.length);
  const level = (index: number) => box.height - foot - pitch * (index + 0.5);
  return (
    <g>
      <defs>
        <Hatch id={`${id}-w`} gap={7} line="line-window" />
      </defs>
      <Lines box={box} ladder={ladder} x={x} top={head} foot={foot} hatch={`${id}-w`} />
      {rungs.map((rung, index) => (
        <RungMark
          key={index}
          box={box}
          rung={rung}
          number={index + 1}
          x={x}
          y={level(index)}
          above={index + 1 < rungs.length ? level(index + 1) : null}
          clear={x(ladder.low_c)}
          gutter={gutter}
          thick={Math.max(5, Math.min(13, pitch * 0.36))}
          lettered={isLettered(rungs, index, pitch > box.letter * 1.05)}
        />
      ))}
    </g>
  );
}

/** With room, every rung is lettered; else the last one done, the open one and the end of the plan, if they stand clear. */
function isLettered(rungs: Rung[], index: number, room: boolean): boolean {
  if (room) return true;
  const open = rungs.findIndex((rung) => rung.state !== "done");
  if (index === rungs.length - 1) return open < 0 || index < open + 1 || index > open + 2;
  return open < 0 ? false : index === open - 1 || index === open;
}

interface LinesProps {
  box: Box;
  ladder: Ladder;
  x: Scale;
  top: number;
  foot: number;
  hatch: string;
}

function Lines({ box, ladder, x, top, foot, hatch }: LinesProps) {
  const [low, high, limit] = [x(ladder.low_c), x(ladder.high_c), x(ladder.limit_c)];
  const bottom = box.height - foot + 4;
  const text = box.height - box.letter * 0.4;
  const wide = box.place === "desk";
  const range = formatRange("window_c", ladder.low_c, ladder.high_c);
  const most = figure("limit_c", ladder.limit_c).text;
  const end = Math.min(box.width - 2, limit + box.letter * 1.1);
  /** Under the middle of the window, or as far left as keeps clear of what stands at the limit. */
  const beside = (words: string, other: string) => Math.min((low + high) / 2, end - box.letter * (0.6 * other.length + 0.3 * words.length + 0.8));
  return (
    <g font-size={box.letter}>
      <rect x={low} y={top} width={high - low} height={bottom - top} fill={`url(#${hatch})`} />
      <path d={`M${low} ${top}V${bottom}M${high} ${top}V${bottom}`} class="line-window-edge" />
      <path d={`M${limit} ${top}V${bottom}`} class="line-rail" />
      <path d={`M${limit - 7} ${top}V${bottom}`} class="line-rail-inner" />
      <text x={beside(range, most)} y={text} text-anchor="middle" class="ink-now">
        {range}
      </text>
      <text x={end} y={text} text-anchor="end" class="ink-soft">
        {most}
      </text>
      {wide && (
        <g>
          <text x={beside(t("picture.window"), t("picture.limit"))} y={box.letter} text-anchor="middle" class="ink-now">
            {t("picture.window")}
          </text>
          <text x={end} y={box.letter} text-anchor="end" class="ink-soft">
            {t("picture.limit")}
          </text>
        </g>
      )}
    </g>
  );
}

interface RungProps {
  box: Box;
  rung: Rung;
  number: number;
  x: Scale;
  y: number;
  above: number | null;
  thick: number;
  lettered: boolean;
  /** Left edge of the window, and of the ground the rungs stand on. */
  clear: number;
  gutter: number;
}
interface LabelProps extends Pick<RungProps, "box" | "rung" | "clear" | "gutter" | "y" | "thick"> {
  end: number;
  start: number;
}

function RungMark({ box, rung, number, x, y, above, thick, lettered, clear, gutter }: RungProps) {
  const [from, to] = [x(rung.from_c), Math.max(x(rung.to_c), x(rung.from_c) + thick)];
  const end = rung.reading_c === null ? to : x(rung.reading_c);
  const open = rung.state === "next" || (rung.state === "planned" && box.place === "desk");
  const ranged = open && rung.low_c !== null && rung.high_c !== null;
  const labelFrom = ranged ? Math.max(end, x(rung.high_c ?? rung.to_c)) : end;
  return (
    <g class={`rung rung-${rung.state}`} font-size={box.letter}>
      {above !== null && <path d={`M${to} ${y}V${above}`} class="line-riser" />}
      {rung.state === "done" ? (
        <path d={`M${from + thick / 2} ${y}H${to - thick / 2}`} stroke-width={thick} stroke-linecap="round" class="line-rung" />
      ) : (
        <rect x={from} y={y - thick / 2} width={to - from} height={thick} rx={thick / 2} class="open-rung" />
      )}
      {ranged && <Range low={x(rung.low_c ?? rung.to_c)} high={x(rung.high_c ?? rung.to_c)} y={y} half={thick / 2 + 4} />}
      {rung.reading_c !== null && <circle cx={end} cy={y} r={Math.max(5, thick * 0.72)} class="dot" />}
      {lettered && <EndLabel box={box} rung={rung} end={labelFrom} start={Math.min(from, ranged ? x(rung.low_c ?? rung.from_c) : end < from ? end - thick / 4 : from)} clear={clear} gutter={gutter} y={y} thick={thick} />}
      {box.place === "desk" && (
        <text x={0} y={y + box.letter * 0.36} class="ink-soft">
          {t(rung.level_percent ? "picture.rung_at_level" : "picture.rung", { n: number, level_percent: rung.level_percent ?? null, seconds_s: rung.seconds_s })}
        </text>
      )}
    </g>
  );
}

function Range({ low, high, y, half }: { low: number; high: number; y: number; half: number }) {
  return <rect x={low} y={y - half} width={Math.max(4, high - low)} height={half * 2} rx={half * 0.6} class="open-range" />;
}

/** The temperature at the end of a rung: right of it on clear ground, else left of the rung if there is room, else over it. */
function EndLabel({ box, rung, end, start, clear, gutter, y, thick }: LabelProps) {
  const shown = figure("end_c", rung.reading_c ?? rung.to_c).text;
  const wide = box.letter * 0.7 * shown.length;
  const after = end + thick * 0.75 + 6;
  const before = start - thick * 0.5 - 4;
  const left = after + wide > clear && before - wide > gutter - 6;
  return (
    <text x={left ? before : after} y={y + box.letter * 0.36} text-anchor={left ? "end" : "start"} class={rung.state === "done" ? "ink" : "ink-now"}>
      {shown}
    </text>
  );
}
