import { parseStreamId } from "../streams";

/** Folds the events of one kind of stream. */
interface Book {
  /** Folds a stream of this kind again. Never rejects. */
  refresh(id: string): Promise<void>;
}

/** The book of each kind of stream. Events of a kind that has none are kept, sent and pulled, and fold into nothing. */
export type Books = Record<string, Book>;

/** Folds again the streams that got something new. */
export async function refreshStreams(books: Books, streams: Iterable<string>): Promise<void> {
  await Promise.all([...streams].map(parseStreamId).map(({ kind, id }) => books[kind]?.refresh(id)));
}
