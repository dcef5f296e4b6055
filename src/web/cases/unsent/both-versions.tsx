import { useState } from "react";
import { type DocumentKind, NOBODY } from "#casework";
import type { StoredDocumentSheet, WireBody } from "#contract";

import { keyWords, kindWords, valueWords } from "./document-words.ts";
import type { UnsentDocument } from "./entry.ts";
import { outbox } from "./workshop-outbox.ts";

type Body = Readonly<Record<string, unknown>>;
type Side = "mine" | "theirs";

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/** Keys two versions say different things under. */
const differing = (mine: Body, theirs: Body): readonly string[] =>
  Object.keys(mine).filter((key) => !same(mine[key], theirs[key]));

/** What was changed here counts first; where only the other side changed, theirs. */
const firstChoice = (key: string, before: Body | null, mine: Body): Side =>
  before !== null && same(before[key], mine[key]) ? "theirs" : "mine";

const asBody = (body: WireBody<DocumentKind> | null): Body | null => body as Body | null;

interface ChoiceProps {
  readonly name: string;
  readonly side: Side;
  readonly words: string;
  readonly chosen: boolean;
  readonly onChoose: () => void;
}

const VersionChoice = ({ name, side, words, chosen, onChoose }: ChoiceProps) => (
  <label className="version-choice" data-chosen={chosen}>
    <input type="radio" name={name} checked={chosen} onChange={onChoose} />
    <span>
      <span className="unseen">{side === "mine" ? "yours: " : "theirs: "}</span>
      {words}
    </span>
  </label>
);

interface BothVersionsProps {
  readonly entryKey: string;
  readonly entry: UnsentDocument;
  readonly latest: StoredDocumentSheet;
}

/** A document two people changed: both versions beside each other, line by line, and the person chooses. */
export const BothVersions = ({ entryKey, entry, latest }: BothVersionsProps) => {
  const [chosen, setChosen] = useState<Readonly<Record<string, Side>>>({});
  const mine = asBody(entry.body) ?? {};
  const theirs = asBody(latest.document) ?? {};
  const before = asBody(entry.before);
  const keys = differing(mine, theirs);
  const sideOf = (key: string): Side => chosen[key] ?? firstChoice(key, before, mine);
  const settle = () => {
    const body = {
      ...mine,
      ...Object.fromEntries(keys.map((key) => [key, (sideOf(key) === "mine" ? mine : theirs)[key]])),
    };
    outbox.settle(entryKey, body as WireBody<DocumentKind>);
  };
  return (
    <section className="versions" aria-label={`Two versions of ${kindWords(entry.kind)}`}>
      <p className="notice-words">
        <strong>
          {latest.by === NOBODY ? "Somebody" : latest.by} has saved {kindWords(entry.kind)} since you opened it.
        </strong>{" "}
        Nothing of yours is lost: choose line by line what stands.
      </p>
      <table className="versions-table">
        <thead>
          <tr>
            <th scope="col">Entry</th>
            <th scope="col">Yours, kept here</th>
            <th scope="col">Theirs, in the store</th>
          </tr>
        </thead>
        <tbody>
          {keys.map((key) => (
            <tr key={key}>
              <th scope="row">{keyWords(key)}</th>
              {(["mine", "theirs"] as const).map((side) => (
                <td key={side}>
                  <VersionChoice
                    name={`${entryKey}.${key}`}
                    side={side}
                    words={valueWords((side === "mine" ? mine : theirs)[key])}
                    chosen={sideOf(key) === side}
                    onChoose={() => setChosen({ ...chosen, [key]: side })}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <button type="button" className="press" onClick={settle}>
        Keep what is chosen
      </button>
    </section>
  );
};
