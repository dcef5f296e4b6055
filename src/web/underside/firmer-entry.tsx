import { useCallback, useEffect, useState } from "react";
import {
  checkFirmer,
  type FirmerRubber,
  firmnessOf,
  firmnessWords,
  HARDNESS_RANGE,
  type HardnessChange,
} from "#casework";
import { SourceLink } from "../shell/source-link.tsx";
import { AmountEntry } from "./amount-entry.tsx";
import { Choice } from "./choice.tsx";
import { FIRMER_FACTOR } from "./position-mark.ts";
import type { PossibleFaults } from "./rubber-at.ts";

const SHORE = { low: HARDNESS_RANGE[0], high: HARDNESS_RANGE[1] };
const BY_RATE: FirmerRubber = { kind: "firmer", factor: FIRMER_FACTOR.usual };
const BY_HARDNESS: FirmerRubber = { kind: "firmer", hardness: { from: null, to: null } };
const NOTHING_OPEN: Readonly<Record<keyof HardnessChange, string | null>> = { from: null, to: null };

interface FirmerEntryProps {
  readonly firmer: FirmerRubber;
  /** What the family holds of the sound part's rubber; null: the place has no hardness. */
  readonly rubber: PossibleFaults["rubber"];
  readonly onEnter: (firmer: FirmerRubber) => void;
  /** Told what keeps what is typed from being computed with; null where nothing does. */
  readonly onOpen: (why: string | null) => void;
}

/** What is missing or wrong with what was entered, in one sentence or two; null where it can be computed. */
const troubleOf = (firmer: FirmerRubber, rubber: PossibleFaults["rubber"]): string | null => {
  const [first] = checkFirmer(firmer, rubber?.hardness ?? null);
  if (first === undefined) return null;
  const asked = first.code === "hardness-not-known" ? `Asked for: ${first.needed}.` : `${first.got}: ${first.needed}.`;
  return `${asked} ${first.hint}`.trim();
};

interface HardnessEntriesProps extends Omit<FirmerEntryProps, "firmer"> {
  readonly hardness: HardnessChange;
}

/** Hardness of the old part and of the new, what follows for the rate, and where the relation ends. */
export const HardnessEntries = ({ hardness, rubber, onEnter, onOpen }: HardnessEntriesProps) => {
  const [open, setOpen] = useState(NOTHING_OPEN);
  const openOf = useCallback(
    (which: keyof HardnessChange) => (why: string | null) => setOpen((last) => ({ ...last, [which]: why })),
    [],
  );
  const [openFrom] = useState(() => openOf("from"));
  const [openTo] = useState(() => openOf("to"));
  const firmer: FirmerRubber = { kind: "firmer", hardness };
  const trouble = troubleOf(firmer, rubber);
  const why = open.from ?? open.to ?? trouble;
  useEffect(() => {
    onOpen(why);
    return () => onOpen(null);
  }, [why, onOpen]);
  const firmness = trouble === null ? firmnessOf(firmer, rubber) : null;
  const enter = (next: Partial<HardnessChange>) => onEnter({ kind: "firmer", hardness: { ...hardness, ...next } });
  return (
    <>
      <AmountEntry
        label="Old part"
        unit="Shore A"
        range={SHORE}
        value={hardness.from}
        assumed={false}
        empty={rubber?.hardness == null ? "not known" : `empty: ${rubber.hardness} from the family sheet`}
        onOpen={openFrom}
        onEnter={(from) => enter({ from })}
        onClear={() => enter({ from: null })}
      />
      <AmountEntry
        label="New part"
        unit="Shore A"
        range={SHORE}
        value={hardness.to}
        assumed={false}
        empty="not known"
        onOpen={openTo}
        onEnter={(to) => enter({ to })}
        onClear={() => enter({ to: null })}
      />
      <p className="note firmer-note">
        {firmness === null ? "" : `${firmnessWords(firmness)}; the old hardness ${firmness.origin}. `}
        The relation holds from {SHORE.low} to {SHORE.high} Shore A (<SourceLink source="gent-hardness" />,{" "}
        <SourceLink source="hardness-scatter" />
        ); beyond it, as of many parts of polyurethane, give how many times the rate is.
      </p>
    </>
  );
};

/** How firm the part is that is fitted: how many times the rate, or by the hardness of the old part and of the new. */
export const FirmerEntry = ({ firmer, rubber, onEnter, onOpen }: FirmerEntryProps) => {
  const byHardness = "hardness" in firmer;
  return (
    <div className="firmer-entry">
      {rubber === null && !byHardness ? null : (
        <div className="choices">
          <Choice chosen={!byHardness} onChoose={() => (byHardness ? onEnter(BY_RATE) : undefined)}>
            By its rate
          </Choice>
          <Choice chosen={byHardness} onChoose={() => (byHardness ? undefined : onEnter(BY_HARDNESS))}>
            By its hardness
          </Choice>
        </div>
      )}
      {"hardness" in firmer ? (
        <HardnessEntries hardness={firmer.hardness} rubber={rubber} onEnter={onEnter} onOpen={onOpen} />
      ) : (
        <AmountEntry
          label="Firmer by"
          unit="times"
          range={FIRMER_FACTOR}
          value={firmer.factor}
          assumed={false}
          onOpen={onOpen}
          onEnter={(factor) => onEnter({ kind: "firmer", factor })}
        />
      )}
    </div>
  );
};
