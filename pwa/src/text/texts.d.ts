/** Made by `build/texts.ts`. */
declare module "virtual:texts" {
  /** Of a language: its sentences, with one for each plural form where it has them, null where it has none; and the words
   * that a variant puts in the place of those of its language. */
  interface Texts {
    default: (string | Partial<Record<Intl.LDMLPluralRule, string>> | null)[];
    words: Record<string, string>;
  }
  /** The keys of all sentences, in the order in which each language brings them. */
  export const keys: string[];
  /** By language, English first. */
  export const loads: Record<string, () => Promise<Texts>>;
  /** What places alone say, by key. */
  export const loadsOfPlaces: Record<string, () => Promise<{ default: Record<string, string | Partial<Record<Intl.LDMLPluralRule, string>>> }>>;
  /** The locales whose readers get a variant of a language. */
  export const readBy: Record<string, string[]>;
}
