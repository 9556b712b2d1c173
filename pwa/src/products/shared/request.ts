import type { Values } from "../../documents";

/** Without what nobody has said: the engine names what is missing. */
export function filled(values: Values): Values {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== null && value !== undefined));
}

/** Fields of a request, behind the part of it they stand in, that come from those of the same name in a row of the shop. */
export function from(row: string, fields: readonly string[], part = ""): Record<string, string> {
  return Object.fromEntries(fields.map((field) => [part + field, `${row}.${field}`]));
}
