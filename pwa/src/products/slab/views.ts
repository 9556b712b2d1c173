import type { Views } from "../kindViews";
import { SlabMapSheet } from "./SlabMapSheet";
import { hasPicture, SlabPicture } from "./SlabPicture";
import { SlabCards, SlabHalves } from "./SlabRecordViews";
import { SlabScreen } from "./SlabScreen";
import { slabBoxes, SlabSheet } from "./SlabSheet";

export const slab: Views<"slab"> = {
  Form: SlabScreen,
  hasPicture,
  Picture: SlabPicture,
  Map: SlabMapSheet,
  Cards: SlabCards,
  Paper: SlabHalves,
  Sheet: SlabSheet,
  boxes: slabBoxes,
};
