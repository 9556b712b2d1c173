import { useRef, useState } from "preact/hooks";

import { t } from "../text";

export type PhotoOutcome = "kept" | "unreadable" | "no_room";

interface Props {
  /** Classes of the button. */
  look: string;
  onPick: (file: File) => Promise<PhotoOutcome>;
  /** What is said of a photo that was kept. */
  kept?: string;
}

/** Opens the phone's camera, and says what became of the photo. */
export function TakePhoto({ look, onPick, kept = "photo.kept" }: Props) {
  const input = useRef<HTMLInputElement>(null);
  const [said, setSaid] = useState<PhotoOutcome | "keeping" | null>(null);
  const picked = async (from: HTMLInputElement) => {
    const file = from.files?.[0];
    if (!file || said === "keeping") return;
    setSaid("keeping");
    setSaid(await onPick(file));
    // The same file once more is another photo.
    from.value = "";
  };
  return (
    <>
      <button type="button" class={look} onClick={() => input.current?.click()}>
        {t("button.take_photo")}
      </button>
      <input ref={input} type="file" accept="image/*" capture="environment" hidden onChange={(event) => void picked(event.currentTarget)} />
      <p role="status" class="photo-said">
        {said && t(said === "kept" ? kept : `photo.${said}`)}
      </p>
    </>
  );
}
