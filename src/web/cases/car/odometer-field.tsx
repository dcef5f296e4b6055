import { useCase } from "../case/case-context.tsx";
import { formatThousands } from "../case/case-sheet.tsx";
import { AskedAgain } from "../fields/asked-again.tsx";
import { KeptField } from "../fields/kept-field.tsx";
import { useRefusedText } from "../fields/refused-text.ts";
import { Segments } from "../fields/segments.tsx";
import { documentKey, type UnsentEntry } from "../unsent/entry.ts";
import { outbox, useOutbox } from "../unsent/workshop-outbox.ts";
import { asMiles, odometerNeeds, odometerText, offsetAfter, parseOdometer } from "./odometer.ts";

const ODOMETER_CODES: readonly string[] = ["odometer-lower", "odometer-miles", "odometer-jump"];

/** True for a visit that was refused for its odometer alone: said beside the field, not twice. */
export const isOdometerRefusal = (entry: UnsentEntry): boolean =>
  entry.what === "document" &&
  entry.kind === "visit" &&
  entry.state.kind === "refused" &&
  entry.state.findings.every(({ code }) => ODOMETER_CODES.includes(code));

/** What is odd about the odometer, and what it may mean. */
const OdometerQuestion = () => {
  const { visitId, visit, car, pastVisit, change } = useCase();
  const key = documentKey("visit", visitId);
  const entry = useOutbox().entries.get(key);
  if (entry === undefined || !isOdometerRefusal(entry) || entry.state.kind !== "refused") return null;
  const { findings } = entry.state;
  const { odometerKm } = visit;
  const codes = findings.map(({ code }) => code);
  const before = pastVisit?.odometerKm ?? null;
  const again = (km: number | null) => change("visit", (body) => ({ ...(body ?? visit), odometerKm: km }));
  return (
    <AskedAgain where="Odometer" findings={findings}>
      {codes.includes("odometer-miles") && odometerKm !== null && car.distanceUnit === "km" ? (
        <button
          type="button"
          className="link"
          onClick={() => {
            change("car", (body) => ({ ...(body ?? car), distanceUnit: "mi" }));
            again(asMiles(odometerKm));
          }}
        >
          It was read in miles: {formatThousands(asMiles(odometerKm))} km
        </button>
      ) : null}
      {before !== null && odometerKm !== null && odometerKm < before ? (
        <button
          type="button"
          className="link"
          onClick={() => {
            change("car", (body) => ({ ...(body ?? car), odometerOffsetKm: offsetAfter(before, odometerKm) }));
            again(odometerKm);
          }}
        >
          The odometer was replaced: count on from {formatThousands(before)} km
        </button>
      ) : (
        <button type="button" className="link" onClick={() => outbox.confirm(key)}>
          It stands
        </button>
      )}
    </AskedAgain>
  );
};

/** The odometer of this visit, in the unit of the car. */
export const OdometerField = () => {
  const { car, visit, visitId, pastVisit, change } = useCase();
  const [refused, setRefused] = useRefusedText(`${visitId}.odometer`);
  const unit = car.distanceUnit;
  const keep = (text: string) => {
    const km = parseOdometer(text, unit);
    setRefused(km === undefined ? text : null);
    if (km !== undefined) change("visit", (body) => ({ ...(body ?? visit), odometerKm: km }));
  };
  const last = pastVisit === null ? "" : odometerText(pastVisit.odometerKm, unit);
  return (
    <>
      <KeptField
        label="Odometer"
        unit={unit}
        numeric
        value={refused ?? odometerText(visit.odometerKm, unit)}
        wrong={refused !== null}
        note={
          refused !== null
            ? `typed was “${refused}”; needed is ${odometerNeeds(unit)}`
            : last === ""
              ? "as it reads"
              : `last time ${last} ${unit}`
        }
        onKeep={keep}
      />
      <Segments
        label="It counts in"
        options={[
          { value: "km", words: "km" },
          { value: "mi", words: "miles" },
        ]}
        value={unit}
        onChange={(next) => {
          if (next === null || next === unit) return;
          const typed = parseOdometer(odometerText(visit.odometerKm, unit), next) ?? null;
          change("car", (body) => ({ ...(body ?? car), distanceUnit: next }));
          if (visit.odometerKm !== null) change("visit", (body) => ({ ...(body ?? visit), odometerKm: typed }));
        }}
      />
      <OdometerQuestion />
    </>
  );
};
