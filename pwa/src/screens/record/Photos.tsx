import { useState } from "preact/hooks";

import type { BenchEvent } from "../../documents";
import { type BatchRecord, takePhoto } from "../../state";
import { formatTime, t } from "../../text";
import { PhotoView } from "../../ui/PhotoView";
import { TakePhoto } from "../../ui/TakePhoto";
import type { Happening } from "../../ui/Timeline";
import { happenings } from "./happenings";
import { usePhoto } from "./usePhoto";

interface Opened {
  url: string;
  words: string;
}

/** The photos of a batch, in their order, and one more. */
export function Photos({ record, onTaken }: { record: BatchRecord; onTaken: (event: BenchEvent) => void }) {
  const [opened, setOpened] = useState<Opened | null>(null);
  const shots = happenings(record).filter((one) => one.kind === "photographed" && !one.undone && !one.ignored);
  const take = async (file: File) => {
    const taken = await takePhoto(record.summary.batch_id, file);
    if (typeof taken === "string") return taken;
    onTaken(taken);
    return "kept";
  };
  return (
    <section class="card no-print">
      <h2>{t("desk.photos")}</h2>
      {shots.length === 0 && <p class="quiet">{t("desk.no_photos")}</p>}
      <ul class="photos">
        {shots.map((shot) => (
          <li key={shot.id}>
            <Thumb shot={shot} onOpen={setOpened} />
            <time dateTime={new Date(shot.at_ms).toISOString()}>{formatTime(shot.at_ms)}</time>
          </li>
        ))}
      </ul>
      <TakePhoto look="go go-quiet" onPick={take} />
      {opened && <PhotoView {...opened} onClose={() => setOpened(null)} />}
    </section>
  );
}

function Thumb({ shot, onOpen }: { shot: Happening; onOpen: (opened: Opened) => void }) {
  const found = usePhoto(String(shot.body["photo_id"]));
  if (typeof found === "string") return <p class="photo-missing">{t(`photo.${found}`)}</p>;
  const words = t("photo.of", { taken_at_ms: shot.at_ms });
  return (
    <button type="button" class="photo" onClick={() => onOpen({ url: found.url, words })}>
      <img src={found.url} alt={words} />
    </button>
  );
}
