import { PairScreen } from "../pair/PairScreen";
import { SettingsScreen } from "../settings/SettingsScreen";
import { ShopScreen } from "../shop/ShopScreen";

/** /settings, /pair, /shop, /shop/<list>, /shop/<list>/<id>. */
export function Screen({ at }: { at: string }) {
  const [, place, list, id] = at.split("/");
  if (place === "pair") return <PairScreen />;
  return place === "settings" ? <SettingsScreen /> : <ShopScreen list={list} id={id} />;
}
