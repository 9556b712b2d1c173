import type { BenchEvent, Values } from "../documents";
import { phoneNow } from "../platform/clock";
import { shrinkPhoto } from "../platform/picture";
import { inOneTab } from "../platform/tabs";
import { type Photo, type Store, uuid7 } from "../storage";
import { httpPhotos, Refusal } from "../sync/api";
import { sendPhotos } from "../sync/photos";
import { correctedNow } from "./time";

/** Why there is no photo: the file is no picture, or the phone could not keep it. */
export type NoPhoto = "unreadable" | "no_room";
/** Where a photo is that this phone cannot show: behind the network, or not yet sent by the phone that took it. */
export type PhotoElsewhere = "away" | "elsewhere";

interface Parts {
  store: Store;
  /** Writes the event and the picture, both or neither. */
  write: (batchId: string, kind: string, body: Values, photo: Photo) => Promise<BenchEvent>;
  /** Another picture is on the server. */
  sent: () => Promise<void>;
}

/** The pictures of batches. Whatever goes wrong with one, the batch goes on. */
export class Photos {
  constructor(private readonly parts: Parts) {}

  /** Keeps a picture on this phone; the event that tells of it, or why there is none. */
  async take(batchId: string, file: Blob): Promise<BenchEvent | NoPhoto> {
    const picture = await shrinkPhoto(file).catch(() => null);
    if (!picture) return "unreadable";
    const { blob, ...size } = picture;
    const id = uuid7(phoneNow());
    const body = { photo_id: id, bytes: blob.size, ...size };
    try {
      return await this.parts.write(batchId, "photographed", body, { id, blob });
    } catch (error) {
      console.warn("photo not kept:", error);
      return "no_room";
    }
  }

  /** A picture, from this phone or from the server. */
  async find(id: string): Promise<Blob | PhotoElsewhere> {
    const own = await this.parts.store.photos.get(id);
    if (own) return own;
    try {
      return await httpPhotos.photo(id);
    } catch (error) {
      return error instanceof Refusal ? "elsewhere" : "away";
    }
  }

  /** Sends what waits to a server of this version; one tab at a time. */
  async send(engineVersion: string): Promise<void> {
    const { photos, meta } = this.parts.store;
    const waits = (await photos.unsentCount()) > 0;
    if (waits) await meta.put("sent_ms", correctedNow());
    await inOneTab("amberbench-photos", () => sendPhotos(this.parts.store, httpPhotos, engineVersion));
    if (waits) await meta.put("sent_ms", correctedNow());
    await this.parts.sent();
  }
}

const WAITING = "photo of a delivery";

/** Keeps the one photo of what is not written down yet, made smaller, so that a reload does not lose it; null: none any more. */
export async function keepWaiting({ meta }: Store, file: Blob | null): Promise<NoPhoto | "kept"> {
  const made = file && (await shrinkPhoto(file).catch(() => null));
  if (file && !made) return "unreadable";
  return meta.put(WAITING, made?.blob ?? null).then(() => "kept" as const, () => "no_room" as const);
}

export async function findWaiting({ meta }: Store): Promise<Blob | null> {
  return (await meta.get<Blob | null>(WAITING)) ?? null;
}
