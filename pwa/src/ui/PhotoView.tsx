import { useEffect, useRef } from "preact/hooks";

import { t } from "../text";

interface Props {
  url: string;
  /** What it is a photo of. */
  words: string;
  onClose: () => void;
}

/** One photo over the whole screen. */
export function PhotoView({ url, words, onClose }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} class="photo-view" aria-label={words} onClose={onClose}>
      <img src={url} alt={words} />
      <button type="button" class="go" onClick={() => dialog.current?.close()}>
        {t("button.close_photo")}
      </button>
    </dialog>
  );
}
