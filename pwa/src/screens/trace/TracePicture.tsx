import type { TraceWalkReply } from "../../documents";
import { t } from "../../text";
import { columnsOf } from "./seek";

const ROWS = 10;
const WIDE = 72;
const HIGH = 22;
const STEP = 88;

/** Four columns with a box each and lines between; what there is no room for is counted below. */
export function TracePicture({ start, trace, words }: { start: string; trace: TraceWalkReply; words: (node: string) => string }) {
  const columns = columnsOf([start, ...trace.back, ...trace.forward]);
  const shown = columns.map((nodes) => nodes.slice(0, ROWS));
  const at = new Map(shown.flatMap((nodes, column) => nodes.map((node, row): [string, { x: number; y: number }] => [node, { x: 4 + column * STEP, y: 4 + row * (HIGH + 8) }])));
  const height = 26 + Math.max(...shown.map((nodes) => nodes.length)) * (HIGH + 8);
  return (
    <svg class="trace-picture" viewBox={`0 0 ${3 * STEP + WIDE + 8} ${height}`} role="img" aria-label={t("trace.picture")}>
      {trace.links.map(({ from, to }) => {
        const [one, other] = [at.get(from), at.get(to)];
        if (!one || !other) return null;
        const back = one.x >= other.x;
        return <line key={`${from} ${to}`} x1={one.x + (back ? WIDE / 2 : WIDE)} y1={one.y + HIGH / 2} x2={other.x + (back ? WIDE / 2 : 0)} y2={other.y + HIGH / 2} />;
      })}
      {[...at].map(([node, { x, y }]) => (
        <g key={node} class={node === start ? "trace-start" : undefined}>
          <rect x={x} y={y} width={WIDE} height={HIGH} rx="3" />
          <text x={x + 4} y={y + 15}>
            {shortened(words(node))}
          </text>
        </g>
      ))}
      {columns.map((nodes, column) =>
        nodes.length > ROWS ? (
          <text key={column} x={4 + column * STEP} y={height - 6}>
            +{nodes.length - ROWS}
          </text>
        ) : null,
      )}
    </svg>
  );
}

function shortened(words: string): string {
  return words.length > 12 ? `${words.slice(0, 11)}…` : words;
}
