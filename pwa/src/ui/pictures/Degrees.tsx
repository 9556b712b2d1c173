import { figure } from "../../text";
import { type Scale, ticks } from "./scale";

interface Props {
  low_c: number;
  high_c: number;
  /** So many levels at the most. */
  most: number;
  plot: { y: Scale; left: number; right: number };
  letter: number;
}

/** Levels of temperature from edge to edge, in round degrees. */
export function Degrees({ low_c, high_c, most, plot, letter }: Props) {
  return (
    <>
      {ticks(low_c, high_c, most).map((value) => (
        <g key={value}>
          <path d={`M${plot.left} ${plot.y(value)}H${plot.right}`} class="line-grid" />
          <text x={plot.left - 6} y={plot.y(value) + letter * 0.36} text-anchor="end">
            {figure("tick_c", value).text}
          </text>
        </g>
      ))}
    </>
  );
}
