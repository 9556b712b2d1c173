import { useEffect, useState } from "preact/hooks";

import { type Paper, plainPaper, type Sheet, SHEETS } from "../../labels/paper";
import { keepPaper, keptPaper } from "../../state";

/** What somebody has chosen for labels on this phone: the paper by the size of a label, the languages, the package's face by box. */
export interface LabelSettings {
  papers: Record<string, Paper>;
  languages: string[];
  rule: "us" | "eu" | "uk";
  faces: Record<string, number | null>;
  saysMade: boolean;
  eMark: boolean;
}

const FIRST: LabelSettings = { papers: {}, languages: [], rule: "us", faces: {}, saysMade: false, eMark: false };
const M = 1000;
const LABEL_M = { width: 0.07, height: 0.05 };

/** What is kept, and a change of it; null while it is read. */
export function useLabelSettings(): [LabelSettings | null, (change: Partial<LabelSettings>) => void] {
  const [settings, setSettings] = useState<LabelSettings | null>(null);
  useEffect(() => void keptPaper().then((kept) => setSettings({ ...FIRST, ...(kept as LabelSettings | null) })), []);
  const change = (part: Partial<LabelSettings>) => {
    const next = { ...(settings ?? FIRST), ...part };
    setSettings(next);
    void keepPaper(next);
  };
  return [settings, change];
}

/** The paper for labels of a box's size. */
export function paperOf(settings: LabelSettings, box: { label_width_m: number | null; label_height_m: number | null } | undefined): [key: string, paper: Paper] {
  const width = (box?.label_width_m ?? LABEL_M.width) * M;
  const height = (box?.label_height_m ?? LABEL_M.height) * M;
  const key = `${width} ${height}`;
  return [key, settings.papers[key] ?? plainPaper(width, height)];
}

/** The same label on another sheet: as many as it takes, in the middle; whatever was measured was of another paper. */
export function onSheet(paper: Paper, sheet: Sheet | "one"): Paper {
  const { width, height } = paper;
  if (sheet === "one") return plainPaper(width, height);
  const page = SHEETS[sheet];
  const columns = Math.max(1, Math.floor(page.width / width));
  const rows = Math.max(1, Math.floor(page.height / height));
  const tenth = (value: number) => Math.max(0, Math.round(value * 10) / 10);
  return { ...plainPaper(width, height), sheet, columns, rows, x0: tenth((page.width - columns * width) / 2), y0: tenth((page.height - rows * height) / 2) };
}
