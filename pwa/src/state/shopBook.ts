import type { Signal } from "@preact/signals";

import type { BenchEvent, Shop, ShopEdit, ShopList, Values } from "../documents";
import { type Store, uuid7 } from "../storage";
import type { Stream } from "../streams";
import type { Compute } from "./types";

const KIND = "shop_set";

/** In the order in which one fills them in. */
export const SHOP_LISTS: ShopList[] = [
  "ovens",
  "vessels",
  "caramels",
  "chocolates",
  "products",
  "bases",
  "bars",
  "tables",
  "frames",
  "trays",
  "funnels",
  "thermometers",
  "materials",
  "boxes",
  "customers",
  "suppliers",
  "people",
];

interface ShopParts {
  store: Store;
  /** The engine at the bench. */
  compute: Compute;
  /** The phone's clock and its error (ms). */
  phoneNow: () => number;
  offsetMs: () => number;
  shopId: () => string;
  /** The body of an event with who is at the phone. */
  byWhom: (body: Values) => Values;
  /** Something was written to the log. */
  wrote: (stream: string) => void;
}

/** A shop document with every list there is: older servers and phones knew fewer. */
export function wholeShop(document: Shop): Shop {
  const lists = Object.fromEntries(SHOP_LISTS.map((list) => [list, []]));
  return { ...lists, ...document, basis: document.basis ?? {} };
}

/** The shop: its events on this phone, folded into the document that every screen reads. */
export class ShopBook {
  private folding: Promise<void> | null = null;
  private dirty = false;

  constructor(
    private readonly parts: ShopParts,
    private readonly shop: Signal<Shop | null>,
  ) {}

  /** Writes edits, all or none; resolves when they are on the disk and in the document. */
  async write(edits: ShopEdit[]): Promise<void> {
    const { store, phoneNow, offsetMs, shopId, byWhom, wrote } = this.parts;
    const at_ms = phoneNow();
    const stream: Stream = `shop/${shopId()}`;
    const same = { shop_id: shopId(), stream, kind: KIND, at_ms, offset_ms: offsetMs() };
    await store.events.appendAll(edits.map((edit) => ({ ...same, id: uuid7(at_ms), body: byWhom({ ...edit }) })));
    wrote(stream);
    await this.refresh();
  }

  /** Folds the shop again from its events, once more if something came in meanwhile. Never rejects. */
  refresh(): Promise<void> {
    this.dirty = true;
    this.folding ??= this.foldWhileDirty().finally(() => {
      this.folding = null;
    });
    return this.folding;
  }

  private async foldWhileDirty(): Promise<void> {
    while (this.dirty) {
      this.dirty = false;
      try {
        await this.fold();
      } catch (error) {
        console.error("the shop cannot be folded:", error);
      }
    }
  }

  /** The events of the shop, in the order of the log. */
  events(): Promise<BenchEvent[]> {
    return this.parts.store.events.eventsOfStreams("shop");
  }

  private async fold(): Promise<void> {
    const { store, compute, shopId } = this.parts;
    const events = await this.events();
    // A server that keeps no such events yet: its document stands.
    if (events.length === 0) return;
    const { shop } = await compute("shop.fold", { shop_id: shopId() || null, events });
    this.shop.value = wholeShop(shop as Shop);
    await store.meta.put("shop", shop);
  }
}
