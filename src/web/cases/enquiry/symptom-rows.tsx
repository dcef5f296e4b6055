import type { EnquiryDocument, Symptom, SymptomEntry } from "#casework";
import { speedWords } from "./speeds.ts";
import { SymptomConditions } from "./symptom-conditions.tsx";
import { whereWords } from "./where-on-car.ts";

const BRAKING = { none: "not braking", light: "braking lightly", firm: "braking firmly" } as const;
const STEERING = { straight: "straight on", left: "turning left", right: "turning right", lock: "on lock" } as const;

/** When and where a complaint is felt, in one line; "" where nothing was said. */
export const conditionLine = (entry: SymptomEntry): string => {
  const { conditions, since } = entry;
  const speeds = speedWords(conditions.speedKmh);
  return [
    whereWords(entry),
    speeds === "" ? "" : `${speeds} km/h`,
    conditions.braking === null ? "" : BRAKING[conditions.braking],
    conditions.steering === null ? "" : STEERING[conditions.steering],
    conditions.temperature === null || conditions.temperature === "any" ? "" : conditions.temperature,
    conditions.load === null || conditions.load === "any" ? "" : conditions.load,
    since === null ? "" : `since ${since}`,
  ]
    .filter((part) => part !== "")
    .join(", ");
};

interface SymptomRowsProps {
  readonly entries: EnquiryDocument["symptoms"];
  readonly labelOf: (id: string) => string;
  /** Id of the complaint whose conditions are open. */
  readonly open: string | null;
  readonly onOpen: (id: string | null) => void;
  readonly onChange: (entry: SymptomEntry) => void;
  readonly onTakeOff: (id: string) => void;
}

/** The complaints that were heard, each with when and where it is felt. */
export const SymptomRows = ({ entries, labelOf, open, onOpen, onChange, onTakeOff }: SymptomRowsProps) => (
  <ul className="symptoms">
    {entries.map((entry) => {
      const isOpen = entry.symptom === open;
      return (
        <li key={entry.symptom} className="symptom" data-open={isOpen}>
          <div className="symptom-head">
            <button
              type="button"
              className="symptom-name"
              aria-expanded={isOpen}
              onClick={() => onOpen(isOpen ? null : entry.symptom)}
            >
              <strong>{labelOf(entry.symptom)}</strong>
              <span className="label">{conditionLine(entry) || "when and where: not said"}</span>
            </button>
            <button type="button" className="link" onClick={() => onTakeOff(entry.symptom)}>
              Take off<span className="unseen">: {labelOf(entry.symptom)}</span>
            </button>
          </div>
          {isOpen ? <SymptomConditions entry={entry} onChange={onChange} /> : null}
        </li>
      );
    })}
  </ul>
);

interface OfferedProps {
  readonly offered: readonly Symptom[];
  readonly full: boolean;
  readonly onAdd: (id: string) => void;
}

/** Complaints to tap. */
export const OfferedSymptoms = ({ offered, full, onAdd }: OfferedProps) => (
  <ul className="offered">
    {offered.map(({ id, label }) => (
      <li key={id}>
        <button type="button" className="offer" disabled={full} onClick={() => onAdd(id)}>
          <svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
            <path d="M10 3V17M3 10H17" />
          </svg>
          {label}
        </button>
      </li>
    ))}
  </ul>
);
