import { useEffect, useRef, useState } from "preact/hooks";

import { scanned, type Scanned, watchForCode } from "../state";
import { t } from "../text";
import { Sheet } from "../ui/Sheet";

/** A button that opens the camera and hands over the first code it sees; where there is no camera there is no button. */
export function Scan({ onFound }: { onFound: (found: Scanned) => void }) {
  const [open, setOpen] = useState(false);
  if (!("mediaDevices" in navigator)) return null;
  const found = (text: string) => {
    setOpen(false);
    onFound(scanned(text));
  };
  return (
    <>
      <button type="button" class="go go-quiet" onClick={() => setOpen(true)}>
        {t("scan.open")}
      </button>
      {open && <Viewfinder onFound={found} onClose={() => setOpen(false)} />}
    </>
  );
}

function Viewfinder({ onFound, onClose }: { onFound: (text: string) => void; onClose: () => void }) {
  const video = useRef<HTMLVideoElement>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  useEffect(() => {
    const stop = new AbortController();
    if (video.current) void watchForCode(video.current, stop.signal, onFound).then((why) => why && setWrong(why));
    return () => stop.abort();
  }, []);
  return (
    <Sheet title={t("scan.title")} back={t("button.back")} onClose={onClose}>
      {wrong ? <p class="card card-wrong" role="alert">{t(`scan.${wrong}`)}</p> : <video ref={video} class="scan" muted playsInline aria-label={t("scan.title")} />}
    </Sheet>
  );
}
