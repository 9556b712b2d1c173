interface Props {
  label: string;
  detail?: string | undefined;
  tone?: "now" | "quiet";
  /** Before it is armed a tap does nothing; it is drawn so. */
  armed?: boolean;
  onTap: () => void;
}

/** The one button of a bench screen: its lower part, full width. */
export function BigButton({ label, detail, tone = "now", armed = true, onTap }: Props) {
  const long = label.length > 13 ? " act-long" : "";
  return (
    <button type="button" class={`act act-${tone}${long}`} aria-disabled={!armed} data-armed={armed} onClick={onTap}>
      <span>{label}</span>
      {detail && <small>{detail}</small>}
    </button>
  );
}

/** Another thing one may do here, smaller than the big button. */
export function SideButton({ label, onTap }: { label: string; onTap: () => void }) {
  return (
    <button type="button" class="side" onClick={onTap}>
      {label}
    </button>
  );
}
