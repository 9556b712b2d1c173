import { afterEach, expect, test, vi } from "vitest";

import { speak } from "./speech";

afterEach(() => vi.unstubAllGlobals());

/** The browser's speech with the voices given; keeps what it was handed. */
function browserWith(...languages: string[]) {
  const handed: { text: string; lang: string }[] = [];
  const speech = { getVoices: () => languages.map((lang) => ({ lang })), cancel: () => {}, speak: (one: (typeof handed)[0]) => handed.push(one), addEventListener: () => {} };
  vi.stubGlobal("speechSynthesis", speech);
  vi.stubGlobal("SpeechSynthesisUtterance", class { lang = ""; voice = null; constructor(readonly text: string) {} });
  return handed;
}

test("a sentence is handed to a voice of the reader's language", async () => {
  const handed = browserWith("en-GB", "es_MX");
  expect(await speak("Medir ya.", "es")).toBe("spoken");
  expect(handed).toMatchObject([{ text: "Medir ya.", lang: "es_MX" }]);
});

test("a variant is read in its own voice, else in another of its language", async () => {
  const handed = browserWith("en-GB", "es-ES", "es_MX");
  await speak("Medir ya.", "es-MX");
  await speak("Medir ya.", "es");
  expect(handed).toMatchObject([{ lang: "es_MX" }, { lang: "es-ES" }]);
  const fewer = browserWith("es-ES");
  expect(await speak("Medir ya.", "es-MX")).toBe("spoken");
  expect(fewer).toMatchObject([{ lang: "es-ES" }]);
});

test("a voice of another language does not read it, and that is told", async () => {
  const handed = browserWith("de-DE");
  expect(await speak("Medir ya.", "es")).toBe("no_voice");
  expect(handed).toEqual([]);
});

test("a browser without speech says so", async () => {
  vi.stubGlobal("speechSynthesis", undefined);
  expect(await speak("Read now.", "en")).toBe("missing");
});
