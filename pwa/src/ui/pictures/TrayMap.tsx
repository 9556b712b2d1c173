import { t } from "../../text";
import { type Box, Picture, type Place } from "./Picture";

/** A tray from above. Positions (m) are the middles of its deposits and how far they spread, [x, y, across], in laying
 * order, row by row. */
export interface TrayPlan {
  length_m: number;
  width_m: number;
  positions_m: number[][];
  pattern: string;
}

export function TrayMap({ tray, place }: { tray: TrayPlan; place: Place }) {
  const rows = rowsOf(tray.positions_m).length;
  const pattern = t(tray.pattern === "square" ? "picture.square" : "picture.staggered");
  const words = t("picture.tray", { n: tray.positions_m.length, rows, pattern });
  const ratio = Math.min(1.1, Math.max(0.45, tray.width_m / tray.length_m));
  return <Picture label={words} place={place} ratio={ratio} most={460} draw={(box) => <Drawing box={box} tray={tray} />} />;
}

/** The rows in the order they are laid: a row ends where the hand starts again at the edge. */
function rowsOf(positions: number[][]): number[][][] {
  const rows: number[][][] = [];
  for (const at of positions) {
    const row = rows.at(-1);
    const [x, y] = at;
    const alike = row && (Math.abs((row[0]?.[1] ?? 0) - (y ?? 0)) < 1e-6 || Math.abs((row[0]?.[0] ?? 0) - (x ?? 0)) < 1e-6);
    if (row && alike) row.push(at);
    else rows.push([at]);
  }
  return rows;
}

function Drawing({ box, tray }: { box: Box; tray: TrayPlan }) {
  const margin = 8;
  const per_m = Math.min((box.width - 2 * margin) / tray.length_m, (box.height - 2 * margin) / tray.width_m);
  const left = (box.width - tray.length_m * per_m) / 2;
  const at = ([x = 0, y = 0, across = 0]: number[]) => ({ x: left + x * per_m, y: margin + y * per_m, radius: (across / 2) * per_m });
  const rows = rowsOf(tray.positions_m);
  return (
    <g font-size={box.letter}>
      <rect x={left} y={margin} width={tray.length_m * per_m} height={tray.width_m * per_m} class="tray" />
      {rows.map((row, index) => {
        const places = row.map(at);
        const [first, last] = [places[0], places.at(-1)];
        return (
          <g key={index}>
            {first && last && <path d={`M${first.x} ${first.y}L${last.x} ${last.y}`} class="line-row" />}
            {places.map(({ x, y, radius }) => (
              <circle key={`${x} ${y}`} cx={x} cy={y} r={radius} class="deposit" />
            ))}
            {first && index === 0 && <circle cx={first.x} cy={first.y} r={Math.min(6, first.radius * 0.5)} class="datum" />}
          </g>
        );
      })}
    </g>
  );
}
