import { useEffect, useState } from "preact/hooks";

import { findPhoto, type PhotoElsewhere, sync } from "../../state";

type Found = { url: string } | "loading" | PhotoElsewhere;

/** A photo to draw, or why there is none. What is behind the network is asked for again once there is one. */
export function usePhoto(id: string): Found {
  const [found, setFound] = useState<Found>("loading");
  const again = found === "away" && sync.value.reachable === true;
  useEffect(() => {
    if (typeof found === "object") return;
    let current = true;
    findPhoto(id).then(
      (one) => current && setFound(typeof one === "string" ? one : { url: URL.createObjectURL(one) }),
      () => current && setFound("away"),
    );
    return () => {
      current = false;
    };
  }, [id, again]);
  useEffect(() => {
    if (typeof found === "object") return () => URL.revokeObjectURL(found.url);
  }, [found]);
  return found;
}
