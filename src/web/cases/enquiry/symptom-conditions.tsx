import { Fragment, type ReactNode } from "react";
import { type ConditionName, orderConditions, readSaidWhen, type SymptomEntry, symptoms } from "#casework";
import { useCase } from "../case/case-context.tsx";
import { KeptField } from "../fields/kept-field.tsx";
import { useRefusedText } from "../fields/refused-text.ts";
import { Segments } from "../fields/segments.tsx";
import { parseSpeeds, speedWords } from "./speeds.ts";
import { WherePicker } from "./where-picker.tsx";

type Conditions = SymptomEntry["conditions"];
type Words<K extends keyof Conditions> = readonly {
  readonly value: NonNullable<Conditions[K]> & string;
  readonly words: string;
}[];

const BRAKING: Words<"braking"> = [
  { value: "none", words: "not" },
  { value: "light", words: "lightly" },
  { value: "firm", words: "firmly" },
];
const STEERING: Words<"steering"> = [
  { value: "straight", words: "straight" },
  { value: "left", words: "left" },
  { value: "right", words: "right" },
  { value: "lock", words: "on lock" },
];
const TEMPERATURE: Words<"temperature"> = [
  { value: "cold", words: "cold" },
  { value: "warm", words: "warm" },
  { value: "any", words: "either" },
];
const LOAD: Words<"load"> = [
  { value: "empty", words: "empty" },
  { value: "laden", words: "laden" },
  { value: "any", words: "either" },
];

interface SymptomConditionsProps {
  readonly entry: SymptomEntry;
  readonly onChange: (entry: SymptomEntry) => void;
}

/** When a complaint is felt: each condition may stay unsaid. */
export const SymptomConditions = ({ entry, onChange }: SymptomConditionsProps) => {
  const { conditions } = entry;
  const change = (part: Partial<Conditions>) => onChange({ ...entry, conditions: { ...conditions, ...part } });
  const { visitId, enquiry } = useCase();
  const label = symptoms.find(({ id }) => id === entry.symptom)?.label ?? "";
  const order = orderConditions(readSaidWhen(`${enquiry?.words ?? ""} ${label}`));
  const [refused, setRefused] = useRefusedText(`${visitId}.speed.${entry.symptom}`);
  const read = parseSpeeds(refused ?? "");
  const trouble = "trouble" in read ? read.trouble : null;
  const rows: Readonly<Record<ConditionName, ReactNode>> = {
    braking: (
      <Segments
        label="Braking"
        options={BRAKING}
        value={conditions.braking}
        onChange={(braking) => change({ braking })}
      />
    ),
    steering: (
      <Segments
        label="Steering"
        options={STEERING}
        value={conditions.steering}
        onChange={(steering) => change({ steering })}
      />
    ),
    temperature: (
      <Segments
        label="Temperature"
        options={TEMPERATURE}
        value={conditions.temperature}
        onChange={(temperature) => change({ temperature })}
      />
    ),
    load: <Segments label="Load" options={LOAD} value={conditions.load} onChange={(load) => change({ load })} />,
    speed: (
      <KeptField
        label="Speed"
        unit="km/h"
        value={refused ?? speedWords(conditions.speedKmh)}
        wrong={trouble !== null}
        note={trouble ?? "one figure or a range: 90 to 130"}
        onKeep={(text) => {
          const typed = parseSpeeds(text);
          setRefused("trouble" in typed ? text : null);
          if ("speeds" in typed) change({ speedKmh: typed.speeds });
        }}
      />
    ),
  };
  return (
    <div className="conditions">
      <WherePicker where={entry} onChange={(where) => onChange({ ...entry, ...where })} />
      <div className="conditions-rows">
        {order.map((name) => (
          <Fragment key={name}>{rows[name]}</Fragment>
        ))}
        <KeptField
          label="Since when"
          className="field-wide"
          value={entry.since ?? ""}
          onKeep={(text) => onChange({ ...entry, since: text.trim() === "" ? null : text })}
        />
      </div>
    </div>
  );
};
