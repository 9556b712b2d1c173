import { useState } from "preact/hooks";

/** The fields in which something stands that cannot be read, and the way to tell of one. */
export function useUnreadableFields(): [string[], (name: string, fault: boolean) => void] {
  const [unread, setUnread] = useState<string[]>([]);
  return [unread, (name, fault) => setUnread((old) => (fault ? [...new Set([...old, name])] : old.filter((one) => one !== name)))];
}
