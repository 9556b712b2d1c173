import { useEffect, useState } from "preact/hooks";

const SHORT = "(max-height: 699px)";

/** Whether the screen is so low that clocks become a strip and the picture goes. */
export function useShortScreen(): boolean {
  const [short, setShort] = useState(() => matchMedia(SHORT).matches);
  useEffect(() => {
    const query = matchMedia(SHORT);
    const change = () => setShort(query.matches);
    change();
    query.addEventListener("change", change);
    return () => query.removeEventListener("change", change);
  }, []);
  return short;
}
