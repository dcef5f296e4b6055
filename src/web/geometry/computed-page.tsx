import type { ReactNode } from "react";
import type { FieldKey } from "../shell/key-list.tsx";
import type { PageKey } from "../shell/page-keys.ts";
import { Sheet } from "../shell/sheet.tsx";
import type { TitleBlockFacts } from "../shell/title-block.tsx";
import type { Waiting } from "../shell/waiting-line.tsx";

const MARGIN_LOW = 172;

interface ComputedPageProps {
  /** Of the car line, or of the layout. */
  readonly name: string;
  readonly sub: string;
  readonly titleBlock: TitleBlockFacts;
  readonly keys: readonly PageKey[];
  readonly fieldKeys?: readonly FieldKey[];
  readonly waiting: Waiting | null;
  readonly margin: ReactNode;
  /** What the choices over the drawing are about, and the choices. */
  readonly choices: { readonly label: string; readonly of: ReactNode };
  readonly drawing: { readonly label: string; readonly className: string; readonly of: ReactNode };
  readonly sliders?: ReactNode;
}

/** A page on which something of a wheel suspension is computed: choices, drawing, sliders, and the margin that explains it. */
export const ComputedPage = (props: ComputedPageProps) => {
  const { choices, drawing, sliders, fieldKeys = [] } = props;
  return (
    <Sheet
      name={props.name}
      sub={props.sub}
      place="Families"
      subject={null}
      marginLow={MARGIN_LOW}
      keys={props.keys}
      fieldKeys={fieldKeys}
      waiting={props.waiting}
      titleBlock={props.titleBlock}
      margin={props.margin}
    >
      <div className="geometry">
        <section className="subject picks" aria-label={choices.label}>
          {choices.of}
        </section>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be within reach of the keyboard */}
        <section className={`geometry-drawing ${drawing.className}`} aria-label={drawing.label} tabIndex={0}>
          {drawing.of}
        </section>
        {sliders === undefined || sliders === null ? null : <div className="geometry-sliders">{sliders}</div>}
      </div>
    </Sheet>
  );
};
