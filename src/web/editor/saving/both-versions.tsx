import { useId, useMemo, useState } from "react";
import type { KeptSheet } from "../model/draft.ts";
import { pathWords } from "../model/path-words.ts";
import { formatSheetPath } from "../model/sheet-path.ts";
import { formatTyped } from "../model/typed-number.ts";
import type { Editing } from "../use-editing.ts";
import { compareVersions, type Difference, type Side, settleVersions } from "./compare-versions.ts";

const SIDES = ["mine", "theirs"] as const;

const valueWords = (value: unknown): string => {
  const text = formatTyped(value);
  if (text === "") return "not on file";
  return text.length > 160 ? `${text.slice(0, 160)}…` : text;
};

interface BothVersionsProps {
  readonly editing: Editing;
  readonly latest: KeptSheet;
}

/** A sheet two people changed: both versions place by place, and the person chooses what stands. */
export const BothVersions = ({ editing, latest }: BothVersionsProps) => {
  const group = useId();
  const [chosen, setChosen] = useState<Readonly<Record<string, Side>>>({});
  const { sheet, draft } = editing;
  const differences = useMemo(
    () => compareVersions(draft.base.sheet, sheet, latest.sheet),
    [draft.base.sheet, sheet, latest.sheet],
  );
  const sideOf = (difference: Difference): Side => chosen[formatSheetPath(difference.path)] ?? difference.first;
  return (
    <section className="versions sheet-versions" aria-label="Two versions of this car line">
      <p className="notice-words">
        <strong>Somebody has saved this car line since you opened it.</strong> Nothing of yours is lost: choose place by
        place what stands. Nothing is saved by it yet.
      </p>
      <table className="versions-table">
        <thead>
          <tr>
            <th scope="col">Place</th>
            <th scope="col">Yours, kept here</th>
            <th scope="col">Theirs, in the store</th>
          </tr>
        </thead>
        <tbody>
          {differences.map((difference) => {
            const place = formatSheetPath(difference.path);
            return (
              <tr key={place}>
                <th scope="row">{pathWords(sheet, difference.path)}</th>
                {SIDES.map((side) => (
                  <td key={side}>
                    <label className="version-choice" data-chosen={sideOf(difference) === side}>
                      <input
                        type="radio"
                        name={`${group} ${place}`}
                        checked={sideOf(difference) === side}
                        onChange={() => setChosen({ ...chosen, [place]: side })}
                      />
                      <span>
                        <span className="unseen">{side === "mine" ? "yours: " : "theirs: "}</span>
                        {valueWords(difference[side])}
                      </span>
                    </label>
                  </td>
                ))}
              </tr>
            );
          })}
        </tbody>
      </table>
      <button
        type="button"
        className="press"
        onClick={() => editing.settle(settleVersions(sheet, differences, sideOf))}
      >
        Go on with what is chosen
      </button>
    </section>
  );
};
