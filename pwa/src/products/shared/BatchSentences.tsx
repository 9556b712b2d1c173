import type { Input, SlabPlanReply } from "../../documents";
import { t } from "../../text";
import { BasisMarks } from "./Sentences";

/** Of plans of long ago nothing of this is known. */
export type Sized = Partial<Pick<SlabPlanReply, "together" | "good" | "remelt">> & {
  inputs: Input[];
  batches?: { count: number; caramel_kg: number; pieces: number }[];
};

/** How many batches it takes; of several, that what follows is the first of them. */
export function BatchSentences({ reply: { batches = [], together } }: { reply: Sized }) {
  if (!together || together.batches < 2) return null;
  const { caramel_kg, pieces, blocks, leftover_kg } = together;
  return (
    <>
      <p class="answer">{t("desk.batches", { n: together.batches, caramel_kg, pieces })}</p>
      <ul class="plain">
        {batches.map((one) => (
          <li key={`${one.count} ${one.pieces}`}>{t("desk.batches_alike", { n: one.count, caramel_kg: one.caramel_kg, pieces: one.pieces })}</li>
        ))}
      </ul>
      {blocks > 0 && <p>{t("desk.open_blocks_all", { n: blocks, leftover_kg })}</p>}
      <p class="quiet">{t("desk.batches_first")}</p>
    </>
  );
}

/** What of the caramel is old, and how many pieces are likely to be good. */
export function SizeSentences({ reply: { remelt, good, inputs }, pieces }: { reply: Sized; pieces: number }) {
  return (
    <>
      {remelt && remelt.old_kg > 0 && <p class="answer">{t("desk.old_caramel", { n: remelt.n, old_kg: remelt.old_kg, fresh_kg: remelt.fresh_kg })}</p>}
      {good !== undefined && good < pieces && (
        <>
          <p class="answer">{t("desk.good_pieces", { n: good })}</p>
          <BasisMarks inputs={inputs} fields={["yield_share"]} />
        </>
      )}
    </>
  );
}
