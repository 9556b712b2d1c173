/** The documents that phone, server and engine exchange: types only, readable from every layer. */
export type * from "./engine/types";
