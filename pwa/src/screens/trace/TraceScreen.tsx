import { useEffect, useState } from "preact/hooks";

import type { Traced, TraceWalkReply } from "../../documents";
import { loadTrade, packs, refreshSummaries, saveTrace, shop, splitNode, traceHere, traceThere } from "../../state";
import { formatDay, t } from "../../text";
import { Desk } from "../../ui/Desk";
import { SaveButtons } from "../../ui/SaveButtons";
import { columnsOf } from "./seek";
import { TracePicture } from "./TracePicture";
import { countsOf, gotWords, nodeWords, pageOf } from "./traceWords";

/** /trace/<kind>/<id>, and "recall" behind it: back to deliveries and forward to customers. */
export function TraceScreen({ start, recall }: { start: string; recall: boolean }) {
  const [here, setHere] = useState<TraceWalkReply | null>(null);
  const [there, setThere] = useState<Traced | null>(null);
  useEffect(() => {
    loadTrade().then(() => traceHere(start)).then(setHere, (error: unknown) => console.error("trace:", error));
    void refreshSummaries();
    void traceThere(start).then(setThere);
  }, [start]);
  // The server knows all years, the phone what has not been sent: the longer of the two is shown.
  const size = (one: TraceWalkReply | null) => (one ? one.back.length + one.forward.length : -1);
  const trace = size(there?.trace ?? null) >= size(here) ? (there?.trace ?? null) : here;
  const names = new Map((there?.names ?? []).map(({ node, name }) => [node, name]));
  const words = (node: string) => nodeWords(node, names);
  const page = pageOf(start);
  return (
    <Desk title={recall ? t("trace.recall_of", { name: words(start) }) : words(start)} here="records">
      {!trace && <p class="card">{t("desk.starting")}</p>}
      {trace && recall && <p class="quiet">{t("trace.drawn_up", { when: formatDay(Date.now()) })}</p>}
      {trace && <p class={there ? "quiet" : "card"}>{t(there ? "trace.all_years" : "trace.this_phone")}</p>}
      {trace && size(trace) === 0 && <p class="card">{t("trace.nothing")}</p>}
      {trace && !recall && size(trace) > 0 && <TracePicture start={start} trace={trace} words={words} />}
      {trace && <Columns start={start} trace={trace} words={words} recall={recall} />}
      {trace && recall && (
        <button type="button" class="go no-print" onClick={() => window.print()}>
          {t("trace.print")}
        </button>
      )}
      {trace && !recall && (
        <a class="go no-print" href={`/trace/${start}/recall`}>
          {t("trace.recall")}
        </a>
      )}
      {trace && (
        <div class="no-print">
          <SaveButtons files={{ "trace.csv": () => saveTrace(start, rowsOf(start, trace).map(({ node, way }) => ({ node, way, name: words(node) }))) }} />
        </div>
      )}
      {page && (
        <a class="go go-quiet no-print" href={page}>
          {t("trace.its_page")}
        </a>
      )}
      <a class="go go-quiet no-print" href="/batches">
        {t("button.back")}
      </a>
    </Desk>
  );
}

const HEADS = ["trace.deliveries", "trace.batches", "trace.boxes", "trace.customers"];

/** The same as lists: what went in first, who has it last; of boxes how many are out and how many in hand. */
function Columns({ start, trace, words, recall }: { start: string; trace: TraceWalkReply; words: (node: string) => string; recall: boolean }) {
  const columns = columnsOf([start, ...trace.back, ...trace.forward]);
  return (
    <div class="trace-columns">
      {columns.map((nodes, column) =>
        nodes.length === 0 ? null : (
          <section class="card" key={column}>
            <h2>{t(HEADS[column]!)}</h2>
            <ul class="plain">
              {nodes.map((node) => (
                <li key={node}>
                  {recall ? words(node) : <a href={`/trace/${node}`}>{words(node)}</a>}
                  <Counts node={node} start={start} trace={trace} />
                </li>
              ))}
            </ul>
          </section>
        ),
      )}
    </div>
  );
}

/** Of boxes how many are where; of an order which of the boxes in question it got; of a customer the address. */
function Counts({ node, start, trace }: { node: string; start: string; trace: TraceWalkReply }) {
  const [kind, id] = splitNode(node);
  const pack = kind === "pack" ? packs.value.get(id) : undefined;
  const said = pack ? t("trace.counts", countsOf(pack)) : kind === "order" ? gotWords(id, start, trace) : kind === "customer" ? shop.value?.customers.find((one) => one.id === id)?.address : "";
  return said ? <span class="quiet"> {said}</span> : null;
}

function rowsOf(start: string, trace: TraceWalkReply): { node: string; way: string }[] {
  return [{ node: start, way: "start" }, ...trace.back.map((node) => ({ node, way: "back" })), ...trace.forward.map((node) => ({ node, way: "forward" }))];
}
