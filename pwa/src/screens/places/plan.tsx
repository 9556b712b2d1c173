import { KINDS, traitsOf } from "../../products/traitRegistry";
import { PLAN_FORMS } from "../../products/planForms";

/** The form of the kind that has this address; of the first kind where none has. */
export function Screen({ at }: { at: string }) {
  const Form = PLAN_FORMS[KINDS.find((kind) => traitsOf(kind).route === at) ?? KINDS[0]!];
  return Form ? <Form /> : null;
}
