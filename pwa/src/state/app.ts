/** The state of the app: makes its parts once the store is open and connects them. */
import { effect, untracked } from "@preact/signals";

import type { BenchEvent, EventButton, Lot, Order, Pack, PlanDocument, Values } from "../documents";
import { compute } from "../engine/client";
import { onReturn, phoneNow } from "../platform/clock";
import { startSound, stopSound, unlockSound } from "../platform/sound";
import { inOneTab, Tabs } from "../platform/tabs";
import { WakeLock } from "../platform/wakeLock";
import { lastThatCounts } from "../order";
import { type RescuedData, type Store, uuid7 } from "../storage";
import { batchOf, batchStream } from "../streams";
import { isAtWork, runningClocks } from "./atWork";
import { BatchBook, isAtHand } from "./batchBook";
import { StreamBook } from "./streamBook";
import * as trade from "./trade";
import { type StreamFolders, refreshStreams } from "./streamFolders";
import { BatchOrder } from "./batchOrder";
import * as demoShop from "./demoShop";
import { heldByOtherDevice } from "./heldByOtherDevice";
import { Learning } from "./learning";
import { renaming } from "./names";
import { Photos } from "./photos";
import { loadSummaries, takeSummaries } from "./records";
import { type Acknowledged, RunningClocks } from "./runningClocks";
import { SetAside } from "./setAside";
import { byWhom, settings, shop, takeSettings } from "./shop";
import { ShopBook, wholeShop } from "./shopBook";
import { armedAt, awake, batchOrder, batches, engineVersion, rings, seriesBefore, storage, storageErrorState, willRing } from "./signals";
import { Syncing } from "./syncing";
import { TapRecorder } from "./tapRecorder";
import { correctedNow, offsetMs, setOffset } from "./time";
import type { Compute, Settings } from "./types";
import { PendingComputations } from "./pendingComputations";

/** The engine is asked what to do at least this often while a batch runs (ms). */
const LOOK_MS = 15_000;
/** A new batch waits so long for what is said of the bench before it (ms). */
const DAY_WAITS_MS = 1_500;

/** Kinds of events after which what closed batches teach may be another. */
const TEACHING = ["closed", "thrown_away", "left_out", "undone", "redone"];

type Broadcast =
  | { about: "streams"; streams: string[] }
  | { about: "acknowledged"; acknowledged: Acknowledged[] }
  | { about: "offset"; offsetMs: number }
  | { about: "settings"; change: Partial<Settings> };

export class AppState {
  readonly book: BatchBook;
  readonly shopBook: ShopBook;
  readonly runningClocks: RunningClocks;
  readonly taps: TapRecorder;
  readonly learning: Learning;
  readonly syncing: Syncing;
  readonly photos: Photos;
  readonly lotPhotos: Photos;
  readonly setAside: SetAside;
  readonly trade: { lot: StreamBook<Lot>; order: StreamBook<Order>; pack: StreamBook<Pack> };
  private readonly streamFolders: StreamFolders;
  private readonly batchOrder: BatchOrder;
  private readonly tabs = new Tabs<Broadcast>((message) => this.takeBroadcast(message));
  private readonly pendingComputations: PendingComputations;

  constructor(
    readonly store: Store,
    acknowledged: Acknowledged[],
    knownOffsetMs: number | null,
  ) {
    const parts = { store, compute, phoneNow, offsetMs: () => offsetMs.value, shopId: () => shop.value?.id ?? "", engineVersion: () => engineVersion.value };
    this.book = new BatchBook({ ...parts, wrote: (batchId) => this.wrote(batchStream(batchId)) }, batches, seriesBefore);
    this.shopBook = new ShopBook({ ...parts, byWhom, wrote: (stream) => this.wrote(stream) }, shop);
    const desk: Compute = (name, request) => compute(name, request, "desk");
    const atDesk = { ...parts, compute: desk, wrote: (stream: string) => this.wrote(stream) };
    this.trade = {
      lot: new StreamBook<Lot>(atDesk, "lot", trade.lots),
      order: new StreamBook<Order>(atDesk, "order", trade.orders),
      pack: new StreamBook<Pack>(atDesk, "pack", trade.packs),
    };
    this.setAside = new SetAside({ store, refresh: (streams) => this.refreshAll(streams), wrote: (stream) => this.wrote(stream) });
    this.streamFolders = { batch: this.book, shop: this.shopBook, ...this.trade, set_aside: this.setAside };
    this.learning = new Learning(store, desk);
    this.runningClocks = this.makeRingingClocks(acknowledged);
    this.pendingComputations = new PendingComputations(
      { deviceId: store.deviceId, compute: desk, write: (batchId, kind, body) => this.book.write(batchId, kind, body) },
      (batchId) => batches.value.get(batchId),
    );
    this.batchOrder = new BatchOrder({
      compute,
      clock: correctedNow,
      batches: () => [...batches.value.values()],
      isMine: (batch) => !heldByOtherDevice(batch, store.deviceId),
      write: (batchId, kind, body) => this.book.write(batchId, kind, body),
      answered: (reply) => void (batchOrder.value = reply),
    });
    this.taps = new TapRecorder({
      clock: correctedNow,
      batch: (batchId) => batches.value.get(batchId),
      write: (batchId, kind, body) =>
        this.keep(batchId, kind, kind === "dipping_started" ? { ...body, bowls: this.batchOrder.bowlsInUse() } : body),
      silence: () => this.runningClocks.silence(),
      armedAt: () => armedAt.value,
    });
    this.syncing = this.makeSyncing(knownOffsetMs);
    this.photos = new Photos({
      store,
      write: (batchId, kind, body, photo) => this.book.write(batchId, kind, byWhom(body), photo),
      sent: () => this.syncing.count(),
    });
    this.lotPhotos = new Photos({
      store,
      write: (lotId, kind, body, photo) => this.trade.lot.writePhoto(lotId, { kind, body }, photo),
      sent: () => this.syncing.count(),
    });
  }

  /** Shows what the phone knows, then has the engine look at it, then the server. */
  async open(): Promise<void> {
    this.store.onLoss(() => this.rescued());
    await loadSummaries(this.store);
    const stale = await this.book.load();
    this.followBatches();
    onReturn(() => this.returned());
    setInterval(() => this.lookAtAll(), LOOK_MS);
    void Promise.all(stale.map((batchId) => this.book.refresh(batchId)));
    void this.shopBook.refresh();
    void this.learning.refold();
    effect(() => void (engineVersion.value !== null && untracked(() => this.foldOutdated())));
    await this.syncing.count();
    window.addEventListener("online", () => void this.syncing.loop.nudge());
    void this.syncing.loop.nudge();
    void this.store.batches.forgetOld(correctedNow()).catch(() => {});
  }

  /** What an earlier engine folded is folded again, and may teach something else. */
  private async foldOutdated(): Promise<void> {
    if (await this.book.foldOutdated()) await this.learning.noticed();
  }

  async openBatch(plan: PlanDocument): Promise<string> {
    const batchId = uuid7(phoneNow());
    await this.keep(batchId, "batch_opened", { plan, engine_version: engineVersion.value });
    // The check of the bench (tools and allergens of the batches before) reaches the log before the batch is shown; when the
    // engine takes longer than DAY_WAITS_MS, it follows later.
    const checkTheBench = async () => {
      await this.book.refresh(batchId);
      await this.batchOrder.check();
      await this.book.refresh(batchId);
    };
    await Promise.race([checkTheBench(), new Promise((done) => setTimeout(done, DAY_WAITS_MS))]);
    return batchId;
  }

  /** Writes an event, and says so when the phone could not keep it. */
  private async keep(batchId: string, kind: string, body: Values): Promise<void> {
    try {
      await this.book.write(batchId, kind, byWhom(body));
      if (storage.value !== "emptied") storage.value = "open";
      if (TEACHING.includes(kind)) void this.book.refresh(batchId).then(() => this.learning.noticed());
    } catch (error) {
      storage.value = storageErrorState(error);
      throw error;
    }
  }

  /** The browser has thrown the store away: the open batches and the shop are still here, the rest the server has. */
  private rescued(): RescuedData {
    storage.value = "emptied";
    const events = [...batches.value.values()].flatMap((batch) => batch.events);
    return { events, meta: { shop: shop.value, settings: settings.value, offset_ms: offsetMs.value } };
  }

  /** Leaves a closed batch out of what the shop learns, for a reason, or takes it in again. */
  async leaveOut(batchId: string, reason: string | null): Promise<void> {
    await this.keep(batchId, "left_out", reason === null ? { left_out: false } : { left_out: true, reason });
  }

  /** Lets a batch that was thrown away run again. `events`: those of the batch. */
  async takeBackThrownAway(batchId: string, events: BenchEvent[]): Promise<void> {
    const thrown = lastThatCounts(events, "thrown_away");
    if (thrown) await this.keep(batchId, "undone", { event_id: thrown.id });
  }

  /** Says that the batches planned to follow this one are not made, or are after all. */
  async endSeries(batchId: string, ended: boolean): Promise<void> {
    await this.keep(batchId, "series_ended", { ended });
  }

  private makeRingingClocks(acknowledged: Acknowledged[]): RunningClocks {
    const parts = {
      clock: correctedNow,
      startSound,
      stopSound,
      due: (batchId: string) => void this.book.look(batchId),
      remember: (all: Acknowledged[]) => {
        this.tabs.send({ about: "acknowledged", acknowledged: all });
        void this.store.meta.put("acknowledged", all).catch(() => {});
      },
      tell: (batchId: string, { kind, body }: EventButton) => void this.keep(batchId, kind, body).catch(() => {}),
    };
    return new RunningClocks(parts, acknowledged, rings, armedAt, willRing);
  }

  private makeSyncing(knownOffsetMs: number | null): Syncing {
    const parts = {
      store: this.store,
      phoneNow,
      alone: (work: () => Promise<void>) => inOneTab("amberbench-sync", work),
      offset: (ms: number) => this.takeOffset(ms),
      shop: (document: NonNullable<typeof shop.value>) => {
        shop.value = wholeShop(document);
      },
      summaries: (all: Parameters<typeof takeSummaries>[1]) => void takeSummaries(this.store, all),
      touched: (streams: string[]) => {
        this.tabs.send({ about: "streams", streams });
        this.refreshAll(streams);
      },
      exchanged: (engineVersion: string, anotherLog: boolean) => {
        void this.learning.exchanged(anotherLog);
        void this.photos.send(engineVersion).catch((error: unknown) => console.error("photos not sent:", error));
      },
    };
    return new Syncing(parts, knownOffsetMs);
  }

  /** Clocks, wake lock and pending computations follow the batches. */
  private followBatches(): void {
    const lock = new WakeLock((state) => {
      awake.value = state;
    });
    effect(() => {
      const open = [...batches.value.values()];
      const mine = open.filter((batch) => !heldByOtherDevice(batch, this.store.deviceId));
      untracked(() => {
        this.runningClocks.setClocks(mine.flatMap(runningClocks));
        lock.want(mine.filter(isAtHand).flatMap(runningClocks).length > 0);
        for (const { batchId } of open) this.pendingComputations.check(batchId);
        void this.batchOrder.check();
        const clash = renaming(open, this.store.deviceId);
        if (clash) void this.book.write(clash.batchId, "renamed", { name: clash.name }).catch(() => {});
      });
    });
    // Some browsers let an installed app sound without a tap.
    willRing.subscribe((one) => one && void unlockSound());
    offsetMs.subscribe(() => untracked(() => this.runningClocks.rearm()));
  }

  private lookAtAll(): void {
    for (const { batchId, run, failure } of batches.value.values())
      if (failure !== null) void this.book.refresh(batchId);
      else if (run?.closed_at_ms === null) void this.book.look(batchId);
  }

  private returned(): void {
    if (willRing.value) void unlockSound();
    this.runningClocks.rearm();
    this.lookAtAll();
    void this.syncing.loop.nudge();
  }

  /** Folds streams again; closed batches may teach something new. */
  private refreshAll(streams: string[]): void {
    void refreshStreams(this.streamFolders, streams).then(() => {
      const open = (one: string | null) => one === null || batches.value.get(one)?.run?.closed_at_ms === null;
      if (!streams.map(batchOf).every(open)) void this.learning.noticed();
    });
  }

  /** Invented lots, orders and boxes go with the invented shop, and come back with it. */
  async followInvented(isThere: boolean): Promise<void> {
    await demoShop.followInvented(this.store, this.trade, isThere);
  }

  private wrote(stream: string): void {
    this.tabs.send({ about: "streams", streams: [stream] });
    void this.syncing.count().catch(() => {});
    this.syncing.loop.wrote();
  }

  /** What the reader chose is kept, and the other tabs follow. */
  async changeSettings(change: Partial<Settings>): Promise<void> {
    this.tabs.send({ about: "settings", change });
    await this.store.meta.put("settings", takeSettings(change));
  }

  /** A better estimate of the clock's error waits while a batch runs: it must never move a burst that is on. */
  private takeOffset(ms: number): void {
    if (ms === offsetMs.value || [...batches.value.values()].some((batch) => isAtWork(batch, correctedNow()))) return;
    setOffset(ms);
    void this.store.meta.put("offset_ms", ms).catch(() => {});
    this.tabs.send({ about: "offset", offsetMs: ms });
  }

  private takeBroadcast(message: Broadcast): void {
    if (message.about === "acknowledged") this.runningClocks.takeAcknowledged(message.acknowledged);
    else if (message.about === "offset") setOffset(message.offsetMs);
    else if (message.about === "settings") takeSettings(message.change);
    else {
      this.refreshAll(message.streams);
      void this.syncing.count();
    }
  }
}
