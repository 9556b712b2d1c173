/** Made by `build/texts.ts`. */
declare module "virtual:texts" {
  /** A sentence, or one for each plural form; null where the language has none. */
  type Texts = (string | Partial<Record<Intl.LDMLPluralRule, string>> | null)[];
  /** The keys of all sentences, in the order in which each language brings them. */
  export const keys: string[];
  /** By language, English first. */
  export const loads: Record<string, () => Promise<{ default: Texts }>>;
}
