import { type ReactNode, useId, useMemo, useState } from "react";
import { type FieldKey, KeyList } from "./key-list.tsx";
import { Margin } from "./margin.tsx";
import { type PageKey, usePageKeys } from "./page-keys.ts";
import { PlaceLinks, type PlaceName } from "./place-links.tsx";
import { ThemeSwitch } from "./theme-switch.tsx";
import { TitleBlock, type TitleBlockFacts } from "./title-block.tsx";
import { type Waiting, WaitingLine } from "./waiting-line.tsx";

interface SheetProps {
  readonly name: string;
  readonly sub: string;
  readonly place: PlaceName;
  readonly titleBlock: TitleBlockFacts;
  readonly margin: ReactNode;
  /** What the margin is about; null where it may stay low on an upright tablet. Absent: it stands open. */
  readonly subject?: string | null;
  /** How much of the margin stays in view on an upright tablet when it is slid down, px. */
  readonly marginLow?: number;
  readonly keys?: readonly PageKey[];
  /** Keys that hold in a field or slider of the page, for the list of keys. */
  readonly fieldKeys?: readonly FieldKey[];
  readonly waiting?: Waiting | null;
  /** Steps of a job, in the head. */
  readonly line?: ReactNode;
  /** What has to be said under the head while it holds. */
  readonly notice?: ReactNode;
  /** The drawing fills the sheet and never scrolls sideways; a list scrolls as a page. */
  readonly children: ReactNode;
}

const NO_KEYS: readonly PageKey[] = [];
const NO_FIELD_KEYS: readonly FieldKey[] = [];

/** One sheet: head and places, the drawing, the margin that explains it, the title block. */
export const Sheet = ({
  name,
  sub,
  place,
  titleBlock,
  margin,
  subject = "page",
  marginLow,
  keys = NO_KEYS,
  fieldKeys = NO_FIELD_KEYS,
  waiting = null,
  line,
  notice,
  children,
}: SheetProps) => {
  const [listed, setListed] = useState(false);
  const subId = useId();
  const all = useMemo(() => [...keys, { key: "?", does: "this list", run: () => setListed(true) }], [keys]);
  usePageKeys(all);
  return (
    <div className="sheet">
      <title>{`${name}: ${titleBlock.title}, Underbench`}</title>
      <a className="skip" href="#drawing">
        Skip to the drawing
      </a>
      <header className="head">
        <div className="head-name">
          <h1 tabIndex={-1} aria-describedby={subId}>
            {name}
          </h1>
          <p id={subId} className="label">
            {sub}
          </p>
        </div>
        {line}
        <PlaceLinks now={place} />
        <div className="head-buttons">
          <ThemeSwitch />
          <button type="button" className="head-button" aria-label="Keys of this page" onClick={() => setListed(true)}>
            ?
          </button>
        </div>
      </header>
      <WaitingLine waiting={waiting} />
      {notice}
      <main id="drawing" className="drawing" tabIndex={-1}>
        {children}
      </main>
      <Margin subject={subject} low={marginLow}>
        {margin}
      </Margin>
      <TitleBlock {...titleBlock} />
      {listed ? <KeyList keys={keys} fieldKeys={fieldKeys} onClose={() => setListed(false)} /> : null}
    </div>
  );
};
