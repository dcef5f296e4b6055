import { AskedAgain } from "../fields/asked-again.tsx";
import { canBeConfirmed } from "../unsent/can-be-confirmed.ts";
import { outbox } from "../unsent/workshop-outbox.ts";
import { type Cell, cellName } from "./reading-cells.ts";
import type { Readings } from "./use-readings.ts";

interface OddReadingsProps {
  readonly cells: readonly Cell[];
  readonly readings: Readings;
}

/** What was typed in these fields and lies outside what cars show: read it again, or say that it stands. */
export const OddReadings = ({ cells, readings }: OddReadingsProps) => (
  <>
    {readings.refused.map(({ entryKey, entry, cellKey }) => {
      const cell = cells.find(({ key }) => key === cellKey);
      return cell === undefined || entry.state.kind !== "refused" ? null : (
        <AskedAgain key={entryKey} where={cellName(cell)} findings={entry.state.findings}>
          {canBeConfirmed(entry.state.findings) ? (
            <button type="button" className="link" onClick={() => outbox.confirm(entryKey)}>
              It stands
            </button>
          ) : null}
          <button type="button" className="link" onClick={() => outbox.drop(entryKey)}>
            Take it back
          </button>
        </AskedAgain>
      );
    })}
  </>
);
