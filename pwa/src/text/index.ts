export { hasTexts, inLanguage, languages, loadLanguage, loadPlaceTexts, spokenHere } from "./catalogue";
export {
  figure,
  finerFor,
  format,
  formatCountdown,
  formatDate,
  formatDay,
  formatDayOf,
  formatMonth,
  formatDuration,
  formatNumber,
  formatRange,
  formatSides,
  formatTime,
} from "./format";
export { formatMoney, moneyTyped, parseMoney } from "./money";
export { decimalMark, editable, parse } from "./parse";
export { locale, METRIC, reader } from "./reader";
export { fieldName, hasText, problemText, t, textIn } from "./t";
export { dimensionOf, SUFFIX_OF, typedIn, unitFor, unitsOf } from "./units";
