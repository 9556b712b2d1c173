import { useEffect, useMemo, useState } from "preact/hooks";

import type { LabelContentReply, LabelContentRequest, Pack, Shop, Values } from "../../documents";
import { alone, type Drawing } from "../../labels/drawing";
import { label } from "../../labels/label";
import { isTrue, labelSize, outOfPlace, pagesOf, type Paper } from "../../labels/paper";
import { pdf } from "../../labels/pdf";
import { allergenWords, floorsOf, type Language, labelText } from "../../labels/words";
import { EngineProblem } from "../../problems";
import { handOverFile, type LabelChoices, labelContent, type LabelRule, loadTrade, packs, shop, writeFact } from "../../state";
import { languages, loadLanguage, problemText, reader, t, textIn } from "../../text";
import { CountField } from "../../ui/CountField";
import { Desk } from "../../ui/Desk";
import { QuantityField, SwitchField } from "../../ui/fields";
import { GuideCardPage, Refused, TrayCardPage } from "./Cards";
import { type LabelSettings, paperOf, useLabelSettings } from "./labelPaper";
import { PaperFields } from "./PaperFields";
import { Preview } from "./Preview";

type Allergen = NonNullable<LabelContentRequest["may_contain"]>[number];

/** The labels of boxes packed together: what they say, on what they are printed, and the file. */
export function LabelScreen({ packId }: { packId: string }) {
  const [loaded, setLoaded] = useState(false);
  const [settings, change] = useLabelSettings();
  useEffect(() => void loadTrade().then(() => setLoaded(true)), []);
  const pack = packs.value.get(packId);
  const known = shop.value;
  return (
    <Desk title={t("labels.title")} here="orders">
      {loaded && !pack && <p class="card">{t("labels.no_pack")}</p>}
      {pack && known && settings && <PackLabel pack={pack} shop={known} settings={settings} change={change} />}
      <a class="go go-quiet" href="/stock">
        {t("button.back")}
      </a>
    </Desk>
  );
}

interface Props {
  pack: Pack;
  shop: Shop;
  settings: LabelSettings;
  change: (change: Partial<LabelSettings>) => void;
}

/** What is printed of boxes: their labels, the card in a box of several products, the card beside loose goods. */
const KINDS = ["label", "guide", "tray"] as const;
type Kind = (typeof KINDS)[number];

function PackLabel({ pack, shop: known, settings, change }: Props) {
  const box = known.boxes.find((one) => one.id === pack.box_id);
  const boxId = pack.box_id ?? "";
  const [key, paper] = paperOf(settings, box);
  const rule = known.rule ?? settings.rule;
  const face_m2 = settings.faces[boxId] ?? null;
  const spoken = useLanguages(settings.languages.length > 0 ? settings.languages : [reader.value.language]);
  const [contents, wrong] = useContents(known, pack, { rule, face_m2, e_mark: settings.eMark }, spoken);
  const content = contents?.[0] ?? null;
  const [kind, setKind] = useState<Kind>("label");
  const text = useMemo(() => (contents && content && spoken ? { text: labelText(contents, rule, spoken, settings.saysMade), floors: floorsOf(rule, content.net, face_m2) } : null), [contents, spoken, settings.saysMade]);
  const laid = useMemo(() => (text && kind === "label" ? label(text.text, labelSize(paper), text.floors) : null), [text, kind, paper]);
  const kinds = KINDS.filter((one) => one !== "guide" || (box?.lines.length ?? 0) > 1).map((value) => ({ value, label: t(`labels.kind_${value}`) }));
  return (
    <>
      <p class="quiet">{t("labels.guide_only")}</p>
      <SwitchField legend={t("labels.kind")} value={kind} options={kinds} onValue={(value) => setKind(value as Kind)} />
      {wrong && <Refused words={wrong} />}
      {kind !== "guide" &&
        content?.warnings.map((one, nth) => (
          <p class="warning-line" key={nth}>
            {t(`labels.warn_${one.code}`, warned(one.values as Values))}
          </p>
        ))}
      {kind === "guide" && <GuideCardPage pack={pack} shop={known} />}
      {kind === "tray" && text && <TrayCardPage {...text} />}
      {laid && "drawing" in laid && <Preview page={alone(laid.drawing)} label={t("labels.title")} />}
      {laid && "drawing" in laid && !laid.hasCode && pack.code && <p class="quiet">{t("labels.no_room_for_code")}</p>}
      {laid && !("drawing" in laid) && <Refused words={refusal(laid, paper, spoken?.length ?? 1)} />}
      {kind !== "guide" && <Choices settings={settings} change={change} ruleSet={known.rule !== null} boxId={boxId} content={content} rule={rule} />}
      {kind === "label" && <PaperFields key={`${key} ${paper.sheet}`} paper={paper} onPaper={(next) => change({ papers: { ...settings.papers, [key]: next } })} />}
      {laid && "drawing" in laid && content && <Print pack={pack} drawing={laid.drawing} paper={paper} complete={content.is_complete} />}
    </>
  );
}

function warned(values: Values): Values {
  const { allergen } = values;
  return typeof allergen === "string" ? { ...values, allergens: [allergen] } : values;
}

/** Why there is no label, and what would help. */
function refusal(laid: { letters: string; fits: { width: number; height: number } | null }, paper: Paper, spoken: number): string {
  if (laid.letters) return t("labels.unknown_letters", { letters: laid.letters });
  const { fits } = laid;
  const size = `${Math.round(paper.width)} × ${Math.round(paper.height)} mm`;
  const sentence = fits ? t("labels.too_small", { size, fits: `${fits.width} × ${fits.height} mm` }) : t("labels.never_fits", { size });
  return spoken > 1 ? `${sentence} ${t("labels.or_one_language")}` : sentence;
}

/** The languages of a label once their texts are here. */
function useLanguages(names: string[]): Language[] | null {
  const [here, setHere] = useState<string>("");
  const wanted = names.join(" ");
  useEffect(() => void Promise.all(names.map(loadLanguage)).then(() => setHere(wanted)), [wanted]);
  return useMemo(() => (here === wanted ? names.map((locale) => ({ locale, says: (key: string) => textIn(locale, key) })) : null), [here, wanted]);
}

/** What the engine says of the label in each of its languages. */
function useContents(known: Shop, pack: Pack, { rule, face_m2, e_mark }: Pick<LabelChoices, "rule" | "face_m2" | "e_mark">, spoken: Language[] | null): [LabelContentReply[] | null, string] {
  const [contents, setContents] = useState<LabelContentReply[] | null>(null);
  const [wrong, setWrong] = useState("");
  useEffect(() => {
    if (!spoken) return;
    const allergens = [...new Set([...known.caramels, ...known.chocolates, ...known.materials, ...known.products].flatMap((row) => (row.contains ?? []) as Allergen[]))];
    // The first word of an allergen is printed: that of the language of the list.
    const wordsOf = (first: Language) => allergenWords(allergens, [first, ...spoken.filter((one) => one !== first)]);
    setWrong("");
    Promise.all(spoken.map((one, nth) => labelContent(pack, { rule, face_m2, e_mark, words: wordsOf(one), other: nth > 0 })))
      .then(setContents)
      .catch((error: unknown) => {
        if (!(error instanceof EngineProblem)) throw error;
        setWrong(problemText(error.problem));
      });
  }, [known, pack, rule, face_m2, e_mark, spoken]);
  return [contents, wrong];
}

interface ChoicesProps extends Pick<Props, "settings" | "change"> {
  ruleSet: boolean;
  boxId: string;
  content: LabelContentReply | null;
  rule: LabelRule;
}

function Choices({ settings, change, ruleSet, boxId, content, rule }: ChoicesProps) {
  const whole = languages.filter((one) => !one.includes("-"));
  const spoken = [...whole.map((value) => ({ value, label: t(`language.${value}`) })), { value: whole.join(" "), label: t("labels.both") }];
  const chosen = settings.languages.join(" ") || (whole.find((one) => reader.value.language.startsWith(one)) ?? "en");
  const rules = (["us", "eu", "uk"] as const).map((value) => ({ value, label: t(`labels.rule_${value}`) }));
  const asksFace = content?.net?.area_wanted === true || rule !== "us";
  return (
    <section class="card">
      <SwitchField legend={t("labels.languages")} value={chosen} options={spoken} onValue={(value) => change({ languages: value.split(" ") })} />
      {chosen.includes(" ") && <p class="quiet">{t("labels.list_as_copied")}</p>}
      <YesNo legend={t("labels.says_made")} value={settings.saysMade} onValue={(saysMade) => change({ saysMade })} />
      {rule !== "us" && <YesNo legend={t("labels.e_mark")} value={settings.eMark} onValue={(eMark) => change({ eMark })} />}
      {!ruleSet && <SwitchField legend={t("labels.rule")} value={rule} options={rules} onValue={(value) => change({ rule: value as LabelRule })} />}
      {(asksFace || boxId in settings.faces) && (
        <QuantityField label={t("labels.face")} name="area_m2" value={settings.faces[boxId] ?? null} problem={null} note={t(rule === "us" ? "labels.face_us" : "labels.face_eu")} onValue={(value) => change({ faces: { ...settings.faces, [boxId]: value } })} />
      )}
    </section>
  );
}

function YesNo({ legend, value, onValue }: { legend: string; value: boolean; onValue: (yes: boolean) => void }) {
  const options = [true, false].map((one) => ({ value: String(one), label: t(one ? "basis.yes" : "basis.no") }));
  return <SwitchField legend={legend} value={String(value)} options={options} onValue={(one) => onValue(one === "true")} />;
}

/** Makes the file before anybody taps: a browser shares only what is at hand in the tap. */
function Print({ pack, drawing, paper, complete }: { pack: Pack; drawing: Drawing; paper: Paper; complete: boolean }) {
  const [copies, setCopies] = useState(Math.max(1, pack.count));
  const [used, setUsed] = useState(0);
  const each = paper.columns * paper.rows;
  const file = useMemo(() => pdf(pagesOf(drawing, copies, paper, used), t("labels.title")), [drawing, copies, paper, used]);
  const ready = complete && isTrue(paper) && outOfPlace(paper) === null;
  const print = async () => {
    if (!ready) return;
    if (await handOverFile(`labels-${pack.code || pack.id}.pdf`, "application/pdf", file)) await writeFact("pack", pack.id, "labels_printed", { n: copies });
  };
  return (
    <section class="card">
      <CountField label={t("labels.copies")} value={copies} least={1} most={2000} onValue={setCopies} />
      {each > 1 && <CountField label={t("labels.used")} value={Math.min(used, each - 1)} least={0} most={each - 1} onValue={setUsed} />}
      {pack.printed > 0 && <p class="quiet">{t("labels.printed", { n: pack.printed })}</p>}
      {!complete && <p class="warning-line">{t("labels.incomplete")}</p>}
      <button type="button" class="go" aria-disabled={!ready} onClick={() => void print()}>
        {t("labels.print")}
      </button>
    </section>
  );
}
