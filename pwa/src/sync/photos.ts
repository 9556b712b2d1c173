import type { Store } from "../storage";
import { type PhotoApi, Refusal, Unreachable } from "./api";

/** What the server will never take: another picture under this id, too large, not a JPEG. */
const FAULTS = [409, 413, 415, 422];

/** Sends the pictures that wait, one after another, apart from the exchange: no tap waits behind a picture.
 * Stops without a word when the server does not answer; the next exchange brings it here again. */
export async function sendPhotos({ photos }: Store, api: PhotoApi, engineVersion: string): Promise<void> {
  const tried = new Set<string>();
  for (;;) {
    const row = await photos.next(engineVersion, tried);
    if (!row) return;
    tried.add(row.id);
    try {
      await api.send(row.id, row.blob);
      await photos.sent(row.id);
    } catch (error) {
      if (error instanceof Refusal && FAULTS.includes(error.status)) await photos.refused(row, engineVersion);
      else if (error instanceof Unreachable || error instanceof Refusal) return;
      else throw error;
    }
  }
}
