import { parseStreamId } from "../streams";

/** Folds the events of one kind of stream. */
interface StreamFolder {
  /** Folds a stream of this kind again. Never rejects. */
  refresh(id: string): Promise<void>;
}

/** The folder of each kind of stream. Events of a kind that has none are kept, sent and pulled, and fold into nothing. */
export type StreamFolders = Record<string, StreamFolder>;

/** Folds again the streams that got something new. */
export async function refreshStreams(folders: StreamFolders, streams: Iterable<string>): Promise<void> {
  await Promise.all([...streams].map(parseStreamId).map(({ kind, id }) => folders[kind]?.refresh(id)));
}
