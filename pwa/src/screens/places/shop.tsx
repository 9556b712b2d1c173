import { SettingsScreen } from "../settings/SettingsScreen";
import { ShopScreen } from "../shop/ShopScreen";

/** /settings, /shop, /shop/<list>, /shop/<list>/<id>. */
export function Screen({ at }: { at: string }) {
  const [, place, list, id] = at.split("/");
  return place === "settings" ? <SettingsScreen /> : <ShopScreen list={list} id={id} />;
}
