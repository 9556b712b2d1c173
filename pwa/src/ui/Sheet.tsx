import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";

import { t } from "../text";
import { BigButton } from "./BigButton";

interface Props {
  title: string;
  /** What the way back is called, where it leads to no batch. */
  back?: string;
  onClose: () => void;
  children: ComponentChildren;
}

/** A page laid over the screen; what lies under it stays as it is. Its foot leads back. */
export function Sheet({ title, back, onClose, children }: Props) {
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus(), []);
  return (
    <div class="sheet" role="dialog" aria-modal="true" aria-labelledby="sheet-title">
      <h2 id="sheet-title" tabIndex={-1} ref={head}>
        {title}
      </h2>
      {children}
      <div class="sheet-foot">
        <BigButton label={back ?? t("button.back_to_batch")} onTap={onClose} />
      </div>
    </div>
  );
}
