import type { SignalWord } from "../../documents";
import { t } from "../../text";
import { CautionList } from "../shared/paper";
import type { RecordOf } from "../kindViews";
import { ChocolateCompared, ChocolatePicture } from "./ChocolateCompared";
import { Card, Section } from "../../ui/Card";

const CAUTIONS: [SignalWord, string][] = [
  ["WARNING", "caution.no_metal"],
  ["CAUTION", "caution.bowl_hot"],
  ["NOTICE", "caution.chocolate_dry"],
  ["WARNING", "caution.chocolate_label"],
  ["WARNING", "caution.fork_carries"],
];

/** A bowl of chocolate looked back at: planned beside happened, and its temperature. */
export function ChocolateCards({ record }: { record: RecordOf<"chocolate"> }) {
  return (
    <>
      <ChocolateCompared record={record} />
      <Card title={t("desk.bowl_happened")}>
        <ChocolatePicture record={record} />
      </Card>
    </>
  );
}

/** The same for the folder. */
export function ChocolateHalves({ record }: { record: RecordOf<"chocolate"> }) {
  return (
    <div class="halves">
      <ChocolateCompared record={record} />
      <Section title={t("desk.bowl_happened")}>
        <ChocolatePicture record={record} />
        <CautionList cautions={CAUTIONS} />
      </Section>
    </div>
  );
}
