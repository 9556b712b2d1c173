/** Signs drawn here, so that they print and scale; each stands beside its word and says nothing by itself. */
interface Props {
  size?: number;
}

function Sign({ size = 32, children }: Props & { children: preact.ComponentChildren }) {
  return (
    <svg class="sign" width={size} height={size} viewBox="0 0 32 32" aria-hidden="true">
      {children}
    </svg>
  );
}

/** First aid: white cross on green, ISO 7010 E003. */
export function AidSign(props: Props) {
  return (
    <Sign {...props}>
      <rect width="32" height="32" rx="3" class="aid-ground" />
      <path d="M13 5h6v8h8v6h-8v8h-6v-8H5v-6h8z" class="aid-cross" />
    </Sign>
  );
}

export function BackSign(props: Props) {
  return (
    <Sign {...props}>
      <path d="M13 6 5 13l8 7M6 13h13a7 7 0 0 1 0 14h-5" class="stroke" />
    </Sign>
  );
}

export function MoreSign(props: Props) {
  return (
    <Sign {...props}>
      <path d="M5 9h22M5 16h22M5 23h22" class="stroke" />
    </Sign>
  );
}

export function BellSign(props: Props) {
  return (
    <Sign {...props}>
      <path d="M6 24h20l-3-5v-6a7 7 0 0 0-14 0v6zM13 28h6M16 3v3" class="stroke" />
    </Sign>
  );
}

export function ClearSign(props: Props) {
  return (
    <Sign {...props}>
      <path d="M11 6h16v20H11L3 16zM15 12l8 8M23 12l-8 8" class="stroke" />
    </Sign>
  );
}

/** Safety alert: a triangle with an exclamation mark, ISO 3864-2 / ANSI Z535.4. */
export function AlertSign(props: Props) {
  return (
    <Sign {...props}>
      <path d="M16 3 30 28H2z" class="alert-ground" />
      <path d="M16 11v9M16 23.5v1" class="alert-mark" />
    </Sign>
  );
}
