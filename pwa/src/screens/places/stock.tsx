import { StockScreen } from "../stock/StockScreen";

/** /stock, /stock/new, /stock/<id>. */
export function Screen({ at }: { at: string }) {
  const [, , id] = at.split("/");
  return <StockScreen id={id} />;
}
