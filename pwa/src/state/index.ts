/** The state the screens draw from and the actions they call. Screens import from here and nowhere deeper. */
import { computed, type ReadonlySignal } from "@preact/signals";

import type { BenchEvent, Clock, Lesson, Measured, PairedPhone, PlanDocument, Shop, ShopEdit, Units, Values } from "../documents";
import type { BatchOrderReply } from "../engine/types";
import { phoneNow } from "../platform/clock";
import { handOver, saveFile } from "../platform/files";
import type { WakeState } from "../platform/wakeLock";
import { uuid7 } from "../storage";
import { alarmFile } from "./alarmFile";
import { isAtHand, isOpen } from "./batchBook";
import * as demoShop from "./demoShop";
import * as exports from "./exports";
import * as holder from "./heldByOtherDevice";
import * as learning from "./learning";
import { freeName } from "./names";
import * as paper from "./paper";
import * as phones from "./phones";
import type { NoPhoto, PhotoElsewhere } from "./photos";
import { isArmed } from "./runningClocks";
import * as records from "./records";
import * as shopState from "./shop";
import * as signals from "./signals";
import { appState, applyUpdate, exportFacts, playSound, silenceNow, start } from "./start";
import * as syncing from "./syncing";
import * as time from "./time";
import { summaries } from "./trade";
import type { Batch, BatchRecord, EngineState, OfflineState, Ring, SeriesMember, Settings, StorageState, SyncState, Tap } from "./types";

export { speak, type Spoken } from "../platform/speech";
export { halfMade, keepHalfMade } from "../platform/kept";
export { swallowClick } from "../platform/userActivation";
export { EngineProblem } from "../problems";
export { isBowlInUse } from "./batchOrder";
export { labelsOf, labelsOfProduct } from "./labels";
export { type PlanParts, withMeasured } from "./learning";
export { plan, type PlanAnswer } from "./planning";
export { bestByOf, checkNet, checkPack, type Counted, countedOf, madeAt, nextCode, type Wanted } from "./packing";
export { costOf, priceOf } from "./costs";
export { SHOP_LISTS } from "./shopBook";
export { firstTexts, languageOf } from "./shop";
export { checkRow, densityOf, emptyRow, type FunnelLesson, type PlannedCluster, learnFunnel, ovenPowerOf, type ShopRow, stiffnessOf } from "./shopFormCalls";
export { boughtMaterials, checkLot, checkOrder, dayOf, lots, midnightOf, orders, ordersOverview, packs, stockOverview, stockUses } from "./trade";
export * from "./tradeActions";
export type { LabelChoices, LabelRule } from "./boxLabel";
export { scanned, type Scanned } from "./scanned";
export { watchForCode } from "../platform/camera";
export { saveTrace, split as splitNode, traceThere } from "./tracing";
export type { FilledSheet } from "./paper";
export type { NoPhoto, PhotoElsewhere } from "./photos";
export type * from "./types";
export { applyUpdate, isAtHand, isOpen, playSound, start };

// --- signals ---
/** The shop document; null until it was fetched once or read from the phone. */
export const shop: ReadonlySignal<Shop | null> = shopState.shop;
export const settings: ReadonlySignal<Settings> = shopState.settings;
/** The language somebody chose whose texts are not on this phone yet, and not to be had now; "": none. */
export const missingLanguage: ReadonlySignal<string> = shopState.missingLanguage;
/** The person at this phone; undefined: nobody in particular. */
export const personHere = shopState.personHere;
/** The units in force: the reader's own, else the shop's. */
export const units: ReadonlySignal<Units> = shopState.units;
export const sync: ReadonlySignal<SyncState> = syncing.sync;
/** The open batches, and those closed today; key batch_id, oldest first. */
export const batches: ReadonlySignal<Map<string, Batch>> = signals.batches;
/** The batches closed before that were planned together with others. */
export const seriesBefore: ReadonlySignal<Map<string, SeriesMember>> = signals.seriesBefore;
/** In which order to take the batches that share the bench, and where a wash lies between; null: not yet known. */
export const batchOrder: ReadonlySignal<BatchOrderReply | null> = signals.batchOrder;
/** Corrected time (ms), ticking a few times a second: draw countdowns from it. */
export const now: ReadonlySignal<number> = time.now;
/** Due clocks nobody has acknowledged, longest due first. Non-empty: show the ring strip (too_hot: the whole screen). */
export const rings: ReadonlySignal<Ring[]> = signals.rings;
/** The big button counts; while it does not, draw it as not yet armed. */
export const armed: ReadonlySignal<boolean> = computed(() => isArmed(time.now.value, signals.armedAt.value));
/** A clock of this phone runs, but the audio context needs a tap before it can ring. */
export const soundLocked: ReadonlySignal<boolean> = computed(() => signals.willRing.value && signals.sound.value === "waiting");
/** A clock of this phone runs, and the audio failed although somebody tapped. */
export const noSound: ReadonlySignal<boolean> = computed(() => signals.willRing.value && signals.sound.value === "failed");
export const awake: ReadonlySignal<WakeState> = signals.awake;
export const engine: ReadonlySignal<EngineState> = signals.engine;
export const storage: ReadonlySignal<StorageState> = signals.storage;
/** Whether everything needed without a network is on the phone: the app with its engine, and the shop; or why it cannot be. */
export const offline: ReadonlySignal<OfflineState> = computed(() => {
  const shell = signals.shell.value;
  if (shell !== "storing" && shell !== "stored") return shell;
  return shell === "stored" && shopState.shop.value !== null && signals.engine.value === "ready" ? "ready" : "not_ready";
});
/** A new version waits; `applyUpdate` takes it, or the next start does when no batch runs. */
export const updateWaiting: ReadonlySignal<boolean> = signals.updateWaiting;
/** Summaries of batches, newest first: the server's and this phone's. */
export { summaries };

/** What the batches closed last teach, newest first. */
export const lessons: ReadonlySignal<Lesson[] | null> = learning.lessons;
/** What they amount to; null while nothing has been taught. */
export const measured: ReadonlySignal<Measured | null> = learning.measured;

/** The other device that holds a batch, and since when; null: this phone holds it. */
export function heldByOtherDevice(batch: Batch): holder.OtherHolder | null {
  return holder.heldByOtherDevice(batch, signals.deviceId.value);
}

// --- actions ---
export async function changeSettings(change: Partial<Settings>): Promise<void> {
  await (await appState()).changeSettings(change);
}

/** The id of a new row of the shop. */
export function newId(): string {
  return uuid7(phoneNow());
}

/** Writes edits of the shop: all of them or none. */
export async function editShop(edits: ShopEdit[]): Promise<void> {
  const state = await appState();
  await state.shopBook.write(edits);
  const said = edits.find(({ doc, field }) => doc === "shop" && field === "invented");
  if (said) await state.followInvented(said.value === true);
}

/** Fills an empty shop with the invented one; an edit like any other. */
export async function takeDemoShop(): Promise<void> {
  await editShop(await demoShop.demoEdits());
}

/** The rows in which only invented values stand, as "<list>/<id>", and "shop/name" for an invented name of the shop. */
export async function inventedDocs(): Promise<Set<string>> {
  return demoShop.inventedDocs(await (await appState()).shopBook.events());
}

/** The edits that bring the invented shop back after it was taken away; none: there is nothing to bring back. */
export async function editsBack(): Promise<ShopEdit[]> {
  return demoShop.editsBack(await (await appState()).shopBook.events());
}

/** Hands a file that is made to another app, or saves it; false: the person let it be. */
export function handOverFile(name: string, type: string, bytes: Uint8Array<ArrayBuffer>): Promise<boolean> {
  return handOver(new File([bytes], name, { type }));
}

/** Opens a batch; resolves with its id as soon as the event is on the disk. Rejects when it could not be kept. */
export async function openBatch(plan: PlanDocument): Promise<string> {
  return (await appState()).openBatch(plan);
}

/** The one way a tap becomes an event. Resolves when it is on the disk, before the engine has looked at it.
 * Rejects when the phone could not keep it (`storage` says so too). */
export async function record(batchId: string, kind: string, body: Values): Promise<Tap> {
  return (await appState()).taps.record(batchId, kind, body);
}

/** Writes a note on a batch, running or closed; false when the tap did not count. */
export async function note(batchId: string, text: string): Promise<boolean> {
  return (await record(batchId, "noted", { text })) === "written";
}

/** Leaves a closed batch out of what the shop learns, for a reason; null takes it in again. */
export async function leaveOut(batchId: string, reason: string | null): Promise<void> {
  await (await appState()).leaveOut(batchId, reason);
}

/** Keeps a photo of a batch, made smaller; the event that tells of it, or why there is none. Never rejects for the photo. */
export async function takePhoto(batchId: string, file: Blob): Promise<BenchEvent | NoPhoto> {
  return (await appState()).photos.take(batchId, file);
}

/** A photo by its id, or where it is. */
export async function findPhoto(id: string): Promise<Blob | PhotoElsewhere> {
  return (await appState()).photos.find(id);
}

/** Takes back what `advice.undo` names. */
export async function undo(batchId: string): Promise<Tap> {
  return (await appState()).taps.undo(batchId);
}

/** Puts back what `advice.redo` names. */
export async function redo(batchId: string): Promise<Tap> {
  return (await appState()).taps.redo(batchId);
}

/** Says that the batches planned to follow this one are not made, or are after all. */
export async function endSeries(batchId: string, ended: boolean): Promise<void> {
  await (await appState()).endSeries(batchId, ended);
}

/** Lets a batch that was thrown away run again. */
export async function takeBackThrownAway(batchId: string, events: BenchEvent[]): Promise<void> {
  await (await appState()).takeBackThrownAway(batchId, events);
}

/** Stops the ringing and acknowledges what rang; call it on any first tap while `rings` is not empty. */
export function silence(): void {
  silenceNow();
}

/** What a batch of a product is called, told apart from every other one of this evening. */
export function nextName(product: string): string {
  return freeName(product, summaries.value, time.correctedNow());
}

export async function refreshSummaries(): Promise<void> {
  await records.refreshSummaries((await appState()).store, time.correctedNow());
}

/** null: neither the server nor this phone has it. */
export async function loadRecord(batchId: string): Promise<BatchRecord | null> {
  return records.loadRecord((await appState()).store, batchId);
}

/** Lets an event that was set aside count, or keeps it out. */
export async function decideSetAside(event: BenchEvent, isIn: boolean): Promise<void> {
  await (await appState()).setAside.decide(event, isIn);
}

/** Somebody has read that the server's log is another one. */
export async function readOfAnotherLog(): Promise<void> {
  await (await appState()).syncing.readOfAnotherLog();
}

/** Pairs this phone by the code of a link or eight digits; rejects with EngineProblem when it is not taken. */
export async function pairThisPhone(code: string): Promise<PairedPhone> {
  return phones.pairThisPhone(await appState(), code);
}

export const { listPhones, offerPairing, revokePhone } = phones;

/** Sends now, cancelling the back-off. */
export async function syncNow(): Promise<void> {
  await (await appState()).syncing.loop.nudge();
}

/** Saves a clock as a calendar file: it rings on a locked phone too, by the phone's own clock. */
export function saveAlarm(batchId: string, clock: Clock, summary: string): void {
  const offset = time.offsetMs.value;
  const times = { writtenMs: time.correctedNow() - offset, startedMs: clock.started_ms - offset, dueMs: clock.due_ms - offset };
  const text = alarmFile({ uid: `${batchId}-${clock.name}@amberbench`, ...times, summary, say: summary });
  saveFile("amberbench-alarm.ics", "text/calendar", text);
}

/** Saves the list of batches as CSV. */
export async function saveBatches(): Promise<void> {
  await exports.saveBatches(summaries.value);
}

/** Saves what happened in a batch as CSV. */
export const saveTimeline = exports.saveTimeline;

/** Saves all that is known of a batch as JSON. */
export const saveRecord = exports.saveRecord;

/** Saves every event as JSON. */
export async function saveLog(): Promise<void> {
  await exports.saveLog((await appState()).store);
}

/** Saves all lots, orders or packs as a file; takes such a file in, and then fetches what is new. */
export const saveList = exports.saveList;
export async function takeIn(...given: Parameters<typeof exports.takeIn>): ReturnType<typeof exports.takeIn> {
  const state = await appState();
  await state.syncing.loop.nudge();
  const taken = await exports.takeIn(...given);
  void state.syncing.loop.nudge();
  return taken;
}

/** Writes a filled-in batch sheet into the log; rejects with EngineProblem when it cannot be so. */
export async function typeBack(batch: BatchRecord, sheet: paper.FilledSheet): Promise<void> {
  await paper.typeBack(await appState(), batch, sheet);
}

/** A batch sheet begun and not yet kept; null: none. */
export async function sheetDraft(batchId: string): Promise<unknown> {
  return paper.sheetDraft(await appState(), batchId);
}

/** Keeps a batch sheet as far as it is typed; null: no longer needed. */
export async function keepSheetDraft(batchId: string, form: unknown): Promise<void> {
  await paper.keepSheetDraft(await appState(), batchId, form);
}

/** Saves all facts not yet on the server into a JSON file; resolves with their number. */
export async function exportUnsent(): Promise<number> {
  return exportFacts(await appState());
}
