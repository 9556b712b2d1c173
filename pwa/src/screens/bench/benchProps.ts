import type { Advice, BenchEvent, Clock, PlanDocument, Run } from "../../documents";
import type { ClockMark } from "../../ui/Clocks";
import type { PhotoOutcome } from "../../ui/TakePhoto";

/** The bench of another batch that goes with this one. */
export interface Neighbour {
  batchId: string;
  name: string;
}

/** What the bench shows of a batch, and what it does with the taps. */
export interface BenchProps {
  batchId: string;
  plan: PlanDocument;
  events: BenchEvent[];
  run: Run;
  advice: Advice;
  clocks: ClockMark[];
  now: number;
  armed: boolean;
  /** A clock runs, but the audio context needs a tap before it can ring: nothing else is asked for meanwhile. */
  soundLocked: boolean;
  /** A tap is written, and what comes next is still being worked out. */
  pending: boolean;
  /** A line about the phone itself (the screen will not stay awake, the engine failed), or "". */
  trouble: string;
  onRecord: (kind: string, body: Record<string, unknown>) => void;
  onUndo: () => void;
  onRedo: () => void;
  /** A bowl of chocolate for what is dipped, and what is dipped for a bowl. */
  others: Neighbour[];
  /** Writes a note; false when the tap did not count (something rang): the words must stay. */
  onNote: (text: string) => Promise<boolean>;
  onPhoto: (file: File) => Promise<PhotoOutcome>;
  /** Puts a clock into the phone's calendar. */
  onCalendar: (clock: Clock) => void;
  /** The first clock of a shift is the sound test; null: it has been heard. */
  soundTest: { onPlay: () => void; onHeard: () => void } | null;
}
export type Sheet = "none" | "aid" | "more" | "map" | "note" | "why" | "who";
