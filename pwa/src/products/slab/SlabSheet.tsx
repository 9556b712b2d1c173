import type { SlabPlan } from "../../documents";
import { t } from "../../text";
import { CutList, SlabMap } from "../../ui/pictures/SlabMap";
import { ByHand, degrees, Line, Melting } from "../shared/sheetParts";
import type { SheetBoxes } from "../kindViews";
import { SlabCautions } from "./SlabCautions";
import { slabOf } from "./slabPictures";
import { Section } from "../../ui/Card";

/** Rows for readings and touch tests of the slab. */
const LOOKS = 4;

/** A slab to be run without a phone. */
export function SlabSheet({ plan: { reply } }: { plan: SlabPlan }) {
  return (
    <>
      <Melting reply={reply} />
      <Halves reply={reply} />
      <SlabCautions jacket={false} />
    </>
  );
}

function Halves({ reply }: Pick<SlabPlan, "reply">) {
  const slab = slabOf(reply);
  const firm = (
    <>
      <span class="box">{t("basis.yes")}</span> <span class="box">{t("paper.not_yet")}</span>
    </>
  );
  return (
    <div class="halves">
      <div>
        <Line names={["paper.box_poured"]} />
        <p>{t("paper.ready_after", { ready_s: reply.cool.ready_s, low_s: reply.cool.ready_low_s, high_s: reply.cool.ready_high_s })}</p>
        <ByHand looks heads={[t("paper.column_time"), degrees("paper.column_top"), t("paper.column_firm")]} number={LOOKS} row={() => ["", "", firm]} />
        <Line names={["paper.box_cut", "paper.box_pieces"]} values={{ n: reply.cut.pieces }} />
        <Line names={["paper.box_rest"]} />
        <Line names={["paper.box_notes"]} />
      </div>
      <Section title={t("desk.slab_and_frame")}>
        <SlabMap slab={slab} place="desk" />
        <CutList slab={slab} />
      </Section>
    </div>
  );
}

/** The boxes of such a sheet where it is typed back. */
export const slabBoxes = (): SheetBoxes => ({
  melting: ({ time }) => time("poured_at_ms"),
  after: ({ rows, more, time }) => (
    <>
      <h2>{t("desk.cooling")}</h2>
      {rows("slab", (n) => t("paper.look", { n }))}
      {more("slab", "button.more_looks")}
      {time("cut_at_ms")}
    </>
  ),
});
