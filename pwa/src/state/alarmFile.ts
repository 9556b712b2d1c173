/** A clock as an iCalendar event with an alarm at its end (RFC 5545 § 3.6.6): it rings on a locked phone too. */
export interface AlarmOf {
  uid: string;
  writtenMs: number;
  startedMs: number;
  dueMs: number;
  summary: string;
  say: string;
}

/** Rings when due, and twice again five minutes apart. */
export function alarmFile({ uid, writtenMs, startedMs, dueMs, summary, say }: AlarmOf): string {
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Amberbench//batch clock//EN",
    "BEGIN:VEVENT",
    `UID:${uid}`,
    `DTSTAMP:${stamp(writtenMs)}`,
    `DTSTART:${stamp(startedMs)}`,
    `DTEND:${stamp(dueMs)}`,
    `SUMMARY:${escaped(summary)}`,
    "BEGIN:VALARM",
    "ACTION:DISPLAY",
    `DESCRIPTION:${escaped(say)}`,
    "TRIGGER;RELATED=END:PT0S",
    "REPEAT:2",
    "DURATION:PT5M",
    "END:VALARM",
    "END:VEVENT",
    "END:VCALENDAR",
  ];
  return lines.map(folded).join("\r\n") + "\r\n";
}

/** An instant (ms) in UTC, as RFC 5545 § 3.3.5 writes it. */
function stamp(ms: number): string {
  return new Date(ms).toISOString().replace(/[-:]|\.\d+/g, "");
}

function escaped(text: string): string {
  return text.replace(/[\\;,]/g, "\\$&").replace(/\r?\n/g, "\\n");
}

/** No line longer than 75 octets: the rest goes on behind a space (RFC 5545 § 3.1). */
function folded(line: string): string {
  const parts: string[] = [];
  let part = "";
  for (const letter of line) {
    if (octets(part + letter) > 74) {
      parts.push(part);
      part = "";
    }
    part += letter;
  }
  return [...parts, part].join("\r\n ");
}

function octets(text: string): number {
  return new TextEncoder().encode(text).length;
}
