import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";

/** A page laid over the bench; what lies under it stays as it is. */
export function Sheet({ title, children }: { title: string; children: ComponentChildren }) {
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus(), []);
  return (
    <div class="sheet" role="dialog" aria-modal="true" aria-labelledby="sheet-title">
      <h2 id="sheet-title" tabIndex={-1} ref={head}>
        {title}
      </h2>
      {children}
    </div>
  );
}
