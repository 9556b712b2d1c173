/** What became of a sentence to be spoken. "no_voice": none for this language; "missing": the browser cannot speak. */
export type Spoken = "spoken" | "no_voice" | "missing";

/** Voices may be listed only a while after they were first asked for (ms). */
const VOICES_MS = 1_500;

/** Speaks a sentence in a language ("en", "es-MX"), in a voice for its variant where there is one; it takes the place of one
 * still being spoken. */
export async function speak(sentence: string, language: string): Promise<Spoken> {
  const { speechSynthesis: voice } = window as { speechSynthesis?: SpeechSynthesis };
  if (!voice) return "missing";
  const voices = await voicesOf(voice);
  const spoken = (one: SpeechSynthesisVoice) => one.lang.toLowerCase().replace("_", "-");
  const fitting = voices.find((one) => spoken(one) === language.toLowerCase()) ?? voices.find((one) => spoken(one).split("-")[0] === language.split("-")[0]);
  if (!fitting) return "no_voice";
  const utterance = new SpeechSynthesisUtterance(sentence);
  utterance.lang = fitting.lang;
  utterance.voice = fitting;
  voice.cancel();
  voice.speak(utterance);
  return "spoken";
}

async function voicesOf(voice: SpeechSynthesis): Promise<SpeechSynthesisVoice[]> {
  if (voice.getVoices().length === 0)
    await new Promise<void>((done) => {
      voice.addEventListener("voiceschanged", () => done(), { once: true });
      setTimeout(done, VOICES_MS);
    });
  return voice.getVoices();
}
