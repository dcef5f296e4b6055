import type { PlaceFinding } from "../cases/place-finding.ts";
import { causes } from "../suspects/cause-table.ts";
import { isThere, lookState, placesOfCause } from "../suspects/look-state.ts";
import { decidingTests } from "../suspects/test-table.ts";
import { findSuspects } from "../suspects/visit-suspects.ts";
import { type MeaningRow, meaningRows, tellingTests } from "./meaning-table.ts";

/** One thing a reading out of its limits can come from, and what is known of it on this car. */
export interface Meaning {
  readonly cause: string;
  readonly label: string;
  /** Found here; looked at and sound; not looked at; or told by a test alone. */
  readonly state: "found" | "sound" | "open" | "test";
  /** What was found, where to look, or which test tells it. */
  readonly says: string;
  /** Places where it would show, on this side of this axle. */
  readonly places: readonly string[];
  /** Chance that it is behind a corner that sits low, by the invented shares of that complaint; null: no shares. */
  readonly chance: number | null;
}

/** What a reading can mean, and what follows: look, cure, or set. */
export interface ReadingMeaning {
  readonly means: readonly Meaning[];
  /** null where the reading is within what it was held against. */
  readonly advice: string | null;
}

const NOTHING: ReadingMeaning = { means: [], advice: null };

/** What the readings at one place can mean where they are beyond what they were held against. */
export function meaningOf(finding: PlaceFinding, findings: readonly PlaceFinding[]): ReadingMeaning {
  const rows = meaningRows.filter((row) => (row.axle ?? finding.axle) === finding.axle && isAsked(row, finding));
  if (rows.length === 0) return finding.kind === "tyre-pressure" ? pressureMeaning(finding) : NOTHING;
  const near = findings.filter(
    (f) => f.axle === finding.axle && (finding.side === null || f.side === null || f.side === finding.side),
  );
  const means = [...new Map(rows.flatMap((row) => meansOf(row, near)).map((m) => [m.cause, m])).values()];
  return { means, advice: adviceOf(finding, means) };
}

/** True where a reading of the row's kind is beyond its limit, its twin or its past on the row's side. */
const isAsked = (row: MeaningRow, { reasons }: PlaceFinding): boolean =>
  reasons.some(
    (r) =>
      r.about !== null &&
      row.about.includes(r.about) &&
      r.judgement?.decision === "beyond" &&
      (row.towards === null || r.towards === row.towards) &&
      // The higher one of two sides is not the one that asks.
      !(r.about === "ride-height" && r.judgement.against === "twin" && r.towards === "more"),
  );

const NO_CONDITIONS = { speedKmh: null, temperature: null, load: null, steering: null, braking: null };

function meansOf(row: MeaningRow, near: readonly PlaceFinding[]): readonly Meaning[] {
  const chances =
    row.complaint === null
      ? []
      : findSuspects(
          [{ symptom: row.complaint, side: "unknown", axle: "unknown", conditions: NO_CONDITIONS, since: null }],
          near,
        ).suspects;
  return row.causes.flatMap((id): Meaning[] => {
    const cause = causes.find((c) => c.id === id);
    if (!cause) return [];
    const places = placesOfCause(cause, near);
    const state = lookState(cause, places);
    const test = decidingTests.find((t) => t.id === tellingTests[id]);
    const shown = places.filter((p) => isThere(cause, p));
    const base = {
      cause: id,
      label: cause.label,
      places: places.map((p) => p.place),
      chance: chances.find((s) => s.cause === id)?.cures ?? null,
    };
    if (state === "there")
      return [{ ...base, state: "found", says: `found: ${shown.map((p) => `${nameOf(p)}, ${p.found}`).join("; ")}` }];
    if (test) return [{ ...base, state: "test", says: `no look tells it: ${test.label.toLowerCase()}` }];
    if (state === "not there") return [{ ...base, state: "sound", says: "looked at, nothing speaks for it" }];
    const open = places.filter((p) => p.grade === null);
    if (places.length === 0) return [];
    return [
      {
        ...base,
        state: "open",
        says: `look at: ${(open.length > 0 ? open : places).map(nameOf).join("; ")}`,
      },
    ];
  });
}

const nameOf = ({ axle, side, label }: PlaceFinding): string =>
  `${axle}${side === null ? "" : ` ${side}`}, ${label.charAt(0).toLowerCase()}${label.slice(1)}`;

function adviceOf(finding: PlaceFinding, means: readonly Meaning[]): string {
  const named = (state: Meaning["state"]): string =>
    means
      .filter((m) => m.state === state)
      .map((m) => m.label.charAt(0).toLowerCase() + m.label.slice(1))
      .join("; ");
  const height = finding.kind === "ride-height";
  const worn = height ? "" : " Angles are never set on a worn joint or at a wrong height.";
  if (means.some((m) => m.state === "found")) return `Cure what was found first: ${named("found")}.${worn}`;
  if (means.some((m) => m.state === "open")) return `Look first: ${named("open")}.${worn}`;
  return height
    ? `Nothing broken was seen. What is left no look tells: ${named("test")}.`
    : "Nothing worn was found: set it where there is an adjuster. Where it does not reach, a part is bent: read inclination and included angle.";
}

/** A pressure off its range or its twin is set; the lower one loses air. */
function pressureMeaning({ reasons }: PlaceFinding): ReadingMeaning {
  const beyond = reasons.filter((r) => r.judgement?.decision === "beyond");
  if (beyond.length === 0) return NOTHING;
  return {
    means: [],
    advice: beyond.some((r) => r.towards === "less")
      ? "Set it cold, and look for what lets the air out: valve, bead, tread."
      : "Set it cold.",
  };
}
