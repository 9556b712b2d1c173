import { signal } from "@preact/signals";

/** Digits typed and not yet sent, by batch and field: a ringing clock or another screen does not lose them. */
export const drafts = signal<Record<string, string>>({});

export function draftKey(batchId: string, field: string): string {
  return `${batchId} ${field}`;
}

export function setDraft(key: string, text: string): void {
  const { [key]: _gone, ...others } = drafts.value;
  drafts.value = text === "" ? others : { ...others, [key]: text };
}

/** Whether the keypad of a batch holds digits: then a due clock shows as a strip. */
export function isTyping(batchId: string): boolean {
  return Object.keys(drafts.value).some((key) => key.startsWith(`${batchId} `));
}
