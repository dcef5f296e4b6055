import { askDoor, type Finding } from "#contract";
import { computeBushRates } from "#engines/rubber";
import { readReference } from "../linkage/corner-record.ts";
import { absolute, type Row, relative, Score, type Tolerance } from "../score.ts";

interface DoorFile {
  readonly cases: readonly { readonly input: unknown; readonly output: unknown }[];
  readonly refused: readonly { readonly input: unknown; readonly at: readonly string[] }[];
}

/** Tolerance of a figure by its path with the places in lists left out. */
type ToleranceOf = (path: string) => Tolerance;

/** Every figure of an answer against the reference, under its path; anything else must be the same. */
function compareAll(score: Score, got: unknown, want: unknown, path: string, toleranceOf: ToleranceOf): void {
  if (typeof want === "number") {
    score.compare(path, got, want, toleranceOf(path));
    return;
  }
  if (typeof want !== "object" || want === null) {
    score.agree(`${path} is the same`, got === want);
    return;
  }
  const there = typeof got === "object" && got !== null ? (got as Readonly<Record<string, unknown>>) : {};
  score.agree("keys and lengths", Object.keys(there).sort().join() === Object.keys(want).sort().join());
  const inList = Array.isArray(want);
  for (const [key, value] of Object.entries(want))
    compareAll(score, there[key], value, inList ? path : path === "" ? key : `${path}.${key}`, toleranceOf);
}

function scoreDoor(id: string, file: DoorFile, toleranceOf: ToleranceOf): readonly Row[] {
  const score = new Score(id, "bush reference");
  for (const one of file.cases) {
    const answer = askDoor(id, one.input);
    if ("findings" in answer) throw new Error(`refused: ${JSON.stringify(answer.findings)}`);
    compareAll(score, answer.output, one.output, "", toleranceOf);
  }
  for (const one of file.refused) {
    const answer = askDoor(id, one.input);
    const findings: readonly Finding[] = "findings" in answer ? answer.findings : [];
    score.agree(
      "refused at the place named",
      one.at.every((path) => findings.some((f) => f.path === path)),
    );
  }
  return score.rows();
}

interface FiniteLengths {
  readonly rows: readonly {
    readonly inner_over_outer: number;
    readonly length_over_wall: number;
    /** Null where it was written down with less than three digits. */
    readonly radial_over_long: number | null;
    readonly axial_over_long: number;
  }[];
}

/** The fitted forms of finite length against the finite elements they were fitted to, over their whole range. */
export function scoreFiniteLength(): readonly Row[] {
  const score = new Score("rubber.rate, finite length", "bush reference");
  for (const row of readReference<FiniteLengths>("doors/bush-finite-length.json").rows) {
    const outer = 20;
    const inner = row.inner_over_outer * outer;
    const rates = computeBushRates({
      inner,
      outer,
      length: row.length_over_wall * (outer - inner),
      shearModulus: 1,
    });
    if (row.radial_over_long !== null)
      score.compare(
        "radial over long",
        (rates.radial ?? Number.NaN) / rates.radialLong,
        row.radial_over_long,
        relative(0.05),
      );
    if (row.length_over_wall >= 1.5)
      score.compare(
        "axial over long",
        (rates.axial ?? Number.NaN) / rates.axialLong,
        row.axial_over_long,
        relative(0.002),
      );
    else score.agree("axial is not given for a short one", rates.axial === null);
  }
  return score.rows();
}

export function scoreRate(): readonly Row[] {
  return scoreDoor("rubber.rate", readReference<DoorFile>("doors/rubber-rate.json"), (path) => {
    if (path === "radial_n_per_mm" || path === "hand.radial_mm") return relative(0.06);
    return relative(path === "axial_n_per_mm" || path === "hand.axial_mm" ? 0.005 : 1e-9);
  });
}

export function scoreFirmer(): readonly Row[] {
  return scoreDoor("rubber.firmer", readReference<DoorFile>("doors/rubber-firmer.json"), () => relative(1e-12));
}

interface HandbookModuli {
  readonly pairs: readonly Readonly<Record<"from" | "to" | "modulus_from" | "modulus_to", number>>[];
}

/** The factor of a harder part against the moduli of a handbook, which go by another relation than ours. */
export function scoreHandbook(): readonly Row[] {
  const score = new Score("rubber.firmer, handbook", "handbook moduli");
  for (const { from, to, modulus_from, modulus_to } of readReference<HandbookModuli>("doors/handbook-moduli.json")
    .pairs) {
    const answer = askDoor("rubber.firmer", { old_hardness_shore_a: from, new_hardness_shore_a: to });
    if ("findings" in answer) throw new Error(`refused: ${JSON.stringify(answer.findings)}`);
    const { factor, factor_low, factor_high } = answer.output as Record<
      "factor" | "factor_low" | "factor_high",
      number
    >;
    const published = modulus_to / modulus_from;
    score.compare("factor, of two published moduli", factor, published, relative(0.03));
    score.agree("the published factor lies in the band", factor_low < published && published < factor_high);
  }
  return score.rows();
}

export function scoreHydraulic(): readonly Row[] {
  return scoreDoor("rubber.hydraulic", readReference<DoorFile>("doors/rubber-hydraulic.json"), (path) => {
    if (path === "sound.peak_loss.frequency_hz") return absolute(1e-4);
    if (/^worst\..*\.speed_km_per_h$/.test(path)) return absolute(1e-3);
    return relative(path === "sound.peak_loss.loss_angle_deg" || /^worst\..*\.mm$/.test(path) ? 1e-8 : 1e-9);
  });
}
