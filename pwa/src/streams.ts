import type { BenchEvent } from "./documents";

/** "<kind>/<id>" */
export type Stream = `${string}/${string}`;

/** Which stream an event belongs to: "batch/<batch_id>", "shop/<shop_id>", or one that only a newer app knows.
 * Older apps named none: what they said of no batch belonged to the shop (as on the server: services/event_validation.py). */
export function streamOf({ stream, batch_id, shop_id }: Pick<BenchEvent, "stream" | "batch_id" | "shop_id">): Stream {
  return (stream as Stream | undefined) ?? (batch_id === null ? `shop/${shop_id}` : batchStream(batch_id));
}

export function batchStream(batchId: string): Stream {
  return `batch/${batchId}`;
}

/** Where it is said of an event that was set aside whether it is let in. */
export function setAsideStream(eventId: string): Stream {
  return `set_aside/${eventId}`;
}

/** "batch/x" is kind "batch", id "x". */
export function parseStreamId(stream: string): { kind: string; id: string } {
  const at = stream.indexOf("/");
  return { kind: stream.slice(0, at), id: stream.slice(at + 1) };
}

/** The batch of a batch's stream; null for any other. */
export function batchOf(stream: string): string | null {
  const { kind, id } = parseStreamId(stream);
  return kind === "batch" ? id : null;
}
