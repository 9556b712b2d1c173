import { DeliveryNoteScreen } from "../label/DeliveryNoteScreen";
import { LabelScreen } from "../label/LabelScreen";

/** /label/<pack>, /label/order/<order>. */
export function Screen({ at }: { at: string }) {
  const [, , id, order] = at.split("/");
  return id === "order" ? <DeliveryNoteScreen orderId={order ?? ""} /> : <LabelScreen packId={id ?? ""} key={id} />;
}
