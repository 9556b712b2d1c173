/** A request, or a part of one, as a form has it: what nobody has said is null or left out. */
type Unfinished<R> = { [K in keyof R]?: R[K] | null };

/** Without what nobody has said: the engine names what is missing, so what the type asks for may be. */
export function withoutEmpty<R extends object>(values: Unfinished<R>): R {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== null && value !== undefined)) as R;
}

/** Fields of a request, behind the part of it they stand in, that come from those of the same name in a row of the shop. */
export function sameNamed(row: string, fields: readonly string[], part = ""): Record<string, string> {
  return Object.fromEntries(fields.map((field) => [part + field, `${row}.${field}`]));
}
