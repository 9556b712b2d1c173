import type { ComponentChildren } from "preact";

interface Props {
  title: string;
  children: ComponentChildren;
}

/** A card of a screen with its heading. */
export function Card({ title, children }: Props) {
  return (
    <section class="card">
      <h2>{title}</h2>
      {children}
    </section>
  );
}

/** The same without a frame, as on paper. */
export function Section({ title, children }: Props) {
  return (
    <section>
      <h2>{title}</h2>
      {children}
    </section>
  );
}
