export { languages, loadLanguage } from "./catalogue";
export {
  figure,
  type Figure,
  format,
  formatCountdown,
  formatDay,
  formatDuration,
  formatNumber,
  formatRange,
  formatTime,
} from "./format";
export { editable, parse, type Parsed } from "./parse";
export { locale, METRIC, reader, type Reader } from "./reader";
export { fieldName, hasText, problemText, said, t } from "./t";
export { dimensionOf, fromSi, toSi, unitFor, unitsOf } from "./units";
