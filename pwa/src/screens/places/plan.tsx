import { KINDS, traitsOf } from "../../products/traitRegistry";
import { placeViewsOf } from "../../products/placeViews";

/** The form of the kind that has this address; of the first kind where none has. */
export function Screen({ at }: { at: string }) {
  const { Form } = placeViewsOf(KINDS.find((kind) => traitsOf(kind).route === at) ?? KINDS[0]!);
  return Form ? <Form /> : null;
}
