import { t } from "../text";
import { formatTimeLeft } from "./timeLeft";
import { shortNames } from "./shortNames";

/** A running clock as it is drawn; `href` leads to the batch it belongs to, where that is another one. */
export interface ClockMark {
  key: string;
  name: string;
  batch: string | null;
  started_ms: number;
  due_ms: number;
  href: string | null;
}

interface Props {
  clocks: ClockMark[];
  now: number;
  strip?: boolean;
}

/** The running clocks, soonest first, all in the same form; as one strip where room is short: one that still runs says
 * more there than one long due. */
export function Clocks({ clocks, now, strip = false }: Props) {
  if (clocks.length === 0) return null;
  const due = (clock: ClockMark) => Number(strip && clock.due_ms <= now);
  const sorted = [...clocks].sort((a, b) => due(a) - due(b) || a.due_ms - b.due_ms || a.key.localeCompare(b.key));
  const many = !strip && sorted.length > 2;
  const words = many ? shortWords(sorted) : sorted.map((clock) => (clock.batch ? `${clock.batch}: ${clock.name}` : clock.name));
  return (
    <ul class={strip ? "clocks clocks-strip" : many ? "clocks clocks-many" : "clocks"} role="list" aria-label={t("screen.clocks")}>
      {sorted.map((clock, index) => {
        const face = <Face clock={clock} words={words[index] ?? ""} now={now} />;
        return <li key={clock.key}>{clock.href && !strip ? <a href={clock.href}>{face}</a> : face}</li>;
      })}
      {sorted.length > 1 && <li class="clocks-rest" aria-hidden="true">{t("screen.clocks_rest", { n: sorted.length - 1 })}</li>}
    </ul>
  );
}

/** Three in a row have room for a few letters: another batch's one clock is told by the batch, any other by itself. */
function shortWords(clocks: ClockMark[]): string[] {
  const short = shortNames(clocks.map((clock) => clock.batch ?? ""));
  return clocks.map(({ batch, name }, index) => {
    const alone = batch !== null && clocks.filter((one) => one.batch === batch).length === 1;
    return (alone && short[index]) || name;
  });
}

function Face({ clock, words, now }: { clock: ClockMark; words: string; now: number }) {
  const left = clock.due_ms - now;
  const gone = Math.min(1, Math.max(0, (now - clock.started_ms) / Math.max(1, clock.due_ms - clock.started_ms)));
  const state = left <= 0 ? "due" : left < 120_000 ? "soon" : "far";
  return (
    <span class={`clock clock-${state}`}>
      <b>{formatTimeLeft(left)}</b>
      <span class="clock-name">{words}</span>
      <i class="clock-gone" style={{ width: `${Math.round(gone * 100)}%` }} />
    </span>
  );
}
