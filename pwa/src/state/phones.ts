/** The phones of the shop: this one is paired, others are let in, listed and revoked. All of it asks the server. */
import type { PairedPhone, PairingOffer } from "../documents";
import { httpPhones } from "../sync/api";
import type { AppState } from "./app";
import type { Role } from "./types";

/** Pairs this phone by the code of a link or eight digits, and sends what it kept. Rejects with EngineProblem when the code is not taken. */
export async function pairThisPhone({ store, syncing }: AppState, code: string): Promise<PairedPhone> {
  const phone = await httpPhones.pair(code, store.deviceId);
  void syncing.loop.nudge();
  return phone;
}

/** Lets one more phone in, for five minutes. Rejects with EngineProblem for a name that is none. */
export function offerPairing(name: string, role: Role): Promise<PairingOffer> {
  return httpPhones.offer(name, role);
}

export const listPhones = (): Promise<PairedPhone[]> => httpPhones.phones();

export const revokePhone = (phoneId: string): Promise<void> => httpPhones.revoke(phoneId);
