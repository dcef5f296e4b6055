import { type CholeskyFactor, type Jet, parameterJet, type SolveEnd, type SolveReport, type Vector } from "#numeric";
import { buildCornerLinkage } from "../corner-linkage.ts";
import type { CornerGeometry } from "../geometry.ts";
import type { PointDeviation } from "../jet-corner.ts";
import {
  type CornerReadings,
  compareReadings,
  type ReadingName,
  type ReadingRow,
  type Settings,
  sourcesOf,
} from "./corner-readings.ts";
import { PointErrors, type SharedError } from "./point-errors.ts";
import { dot, ReadingSpace } from "./reading-space.ts";
import { shiftPoints } from "./shift-points.ts";

/** A corner as far as it is known, and what was measured of it. */
export interface MatchQuestion {
  readonly geometry: CornerGeometry;
  /** Own standard deviations of the points by the mechanism's names, metres. */
  readonly deviations: (names: readonly string[]) => readonly PointDeviation[];
  /** Lower triangle L of the correlations L Lᵀ of those, three rows per name; absent: none hang together. */
  readonly factor?: (names: readonly string[]) => CholeskyFactor | null;
  readonly shared: readonly SharedError[];
  readonly readings: CornerReadings;
}

/** How one reading stands in the matched geometry; rad or m. */
export interface MatchedReading {
  readonly name: ReadingName;
  readonly observed: number;
  readonly fitted: number;
  /**
   * How far it stands from what all other readings and the prior points say of it, in standard deviations of that
   * difference: beyond about 3 it contradicts them.
   */
  readonly contradiction: number;
}

/** The most probable geometry given prior points and readings, with what stays uncertain. */
export interface Match {
  /** `residual`: largest remaining slope of half the squared misfit, per standard deviation of a source. */
  readonly report: SolveReport;
  readonly geometry: CornerGeometry;
  /** Shift of each point of the mechanism, metres, in the order of `errors.names`. */
  readonly shifts: readonly Vector[];
  readonly errors: PointErrors;
  /** The sources at the most probable geometry, in prior standard deviations. */
  readonly sources: Float64Array;
  /** How far camber and toe are set from those of the geometry, radians, where readings say so; 0 without. */
  readonly settings: Settings;
  readonly readings: readonly MatchedReading[];
  /** Squared misfit of readings and points together; of the size of `degreesOfFreedom` where all is as assumed. */
  readonly chiSquared: number;
  readonly degreesOfFreedom: number;
  /** How many independent combinations of coordinates the readings have settled (0 to the number of readings). */
  readonly settled: number;
  readonly posterior: Posterior;
}

const MOST_STEPS = 60;
/** A step below this many prior standard deviations everywhere ends the search. */
const STEP_TOLERANCE = 1e-12;
/** Below this size a step is taken without asking whether the misfit falls: that no longer shows in its digits. */
const SMALL_STEP = 1e-5;
/** Below this size steps that no longer shrink are rounding. */
const ROUNDING_STEP = 1e-7;
const SHORTEST_STEP = 1e-3;

/** What is left of the sources' unit variances after the readings: I - Jᵀ P J, P of the readings' space. */
export class Posterior {
  constructor(
    private readonly errors: PointErrors,
    private readonly rows: readonly Float64Array[],
    private readonly uncertainties: readonly number[],
    /** Null without a reading that says something. */
    private readonly space: ReadingSpace | null,
    readonly sources: number,
  ) {}

  /** Standard deviation of a figure after the readings, from its jet by the coordinates at the matched geometry. */
  deviation(jet: Jet): number {
    return Math.sqrt(this.variance(this.derivatives(jet)));
  }

  /** The same before the readings (derivatives as they are at the matched geometry). */
  priorDeviation(jet: Jet): number {
    return Math.sqrt(dot(this.derivatives(jet), this.derivatives(jet)));
  }

  /** Variance of a linear figure of the sources after the readings; never below 0. */
  variance(derivatives: Float64Array): number {
    const seen = this.seen(derivatives);
    return Math.max(0, dot(derivatives, derivatives) - dot(seen, seen));
  }

  /** Covariances of all coordinates after the readings, m², in the order of the points' names. */
  coordinateCovariances(): readonly (readonly number[])[] {
    const n = 3 * this.errors.names.length;
    const moved = Array.from({ length: n }, (_, i) => this.derivatives(parameterJet(0, i, n)));
    const seen = moved.map((one) => this.seen(one));
    return moved.map((a, i) => moved.map((b, j) => dot(a, b) - dot(seen[i] ?? [], seen[j] ?? [])));
  }

  /**
   * Sources drawn around `centre` with the variances left (first order), from standard normal numbers: a draw of the
   * prior and of the readings' errors, corrected as the readings demand.
   */
  draw(centre: Float64Array, normal: () => number): Float64Array {
    const drawn = Float64Array.from(centre, () => normal());
    const missed = this.rows.map((row, i) => dot(row, drawn) + (this.uncertainties[i] as number) * normal());
    const weights = this.space?.weigh(missed) ?? missed;
    return drawn.map((x, k) => {
      let seen = 0;
      this.rows.forEach((row, i) => {
        seen += (row[k] as number) * (weights[i] as number);
      });
      return (centre[k] as number) + x - seen;
    });
  }

  /** What the readings see of a linear figure, in standard deviations. */
  private seen(derivatives: Float64Array): Float64Array {
    return this.space?.whiten(this.rows.map((row) => dot(row, derivatives))) ?? new Float64Array();
  }

  private derivatives(jet: Jet): Float64Array {
    const out = new Float64Array(this.sources);
    this.errors.derivatives(jet, out);
    return out;
  }
}

/** What the errors of the points are before any reading. */
export function priorErrors(
  question: Pick<MatchQuestion, "geometry" | "deviations" | "factor" | "shared">,
): PointErrors {
  const { pointNames } = buildCornerLinkage(question.geometry).mechanism;
  const factor = question.factor?.(pointNames) ?? null;
  return new PointErrors(pointNames, question.deviations(pointNames), question.shared, factor);
}

/**
 * Fits a corner to its own readings: least squares over the readings and, as the regularising part, the prior points;
 * Gauss-Newton with exact derivatives and step halving, in the space of the readings, so that points known exactly may
 * stand among the others. `report.end`: "infeasible" where a height cannot be reached by the prior geometry, "singular"
 * where the uncertainties vanish; the best geometry found comes back in any case.
 * (Tarantola, Inverse Problem Theory, 3.2, from memory.)
 */
export function solveMatch(question: MatchQuestion): Match {
  const errors = priorErrors(question);
  const { readings } = question;
  const at = (sources: Float64Array): State | null => {
    const shifts = errors.shifts(sources);
    const geometry = shiftPoints(question.geometry, shifts);
    const compared = compareReadings(geometry, errors, readings, sources);
    return compared && { sources, shifts, geometry, ...compared, cost: costOf(compared.rows, sources) };
  };
  const start = new Float64Array(sourcesOf(errors, readings));
  let state = at(start);
  if (!state) {
    const settings = { camber: 0, toe: 0 };
    const { geometry } = question;
    const still = { sources: start, shifts: errors.shifts(start), geometry, rows: [], settings, cost: 0 };
    return describe(errors, still, "infeasible", 0);
  }
  let end: SolveEnd = "iteration-limit";
  let steps = 0;
  let before = Number.POSITIVE_INFINITY;
  while (steps < MOST_STEPS) {
    const step = stepFrom(state);
    if (!step) {
      end = "singular";
      break;
    }
    const size = step.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
    if (size < STEP_TOLERANCE || (size < ROUNDING_STEP && size > before / 2)) {
      end = "converged";
      break;
    }
    before = size;
    steps++;
    const next: State | null = size < SMALL_STEP ? at(moveBy(state.sources, step, 1)) : descend(state, step, at);
    if (!next) {
      end = "ill-posed";
      break;
    }
    state = next;
  }
  return describe(errors, state, end, steps);
}

interface State {
  readonly sources: Float64Array;
  readonly shifts: readonly Vector[];
  readonly geometry: CornerGeometry;
  readonly rows: readonly ReadingRow[];
  readonly settings: Settings;
  readonly cost: number;
}

function costOf(rows: readonly ReadingRow[], sources: Float64Array): number {
  let sum = dot(sources, sources);
  for (const { observed, expected, u } of rows) sum += ((observed - expected) / u) ** 2;
  return sum;
}

const moveBy = (sources: Float64Array, step: Float64Array, part: number): Float64Array =>
  sources.map((x, i) => x + part * (step[i] as number));

/** The full step, halved until the misfit falls; null where no part of it lowers the misfit. */
function descend(from: State, step: Float64Array, at: (sources: Float64Array) => State | null): State | null {
  for (let part = 1; part > SHORTEST_STEP; part /= 2) {
    const next = at(moveBy(from.sources, step, part));
    if (next && next.cost < from.cost) return next;
  }
  return null;
}

/** What the readings ask beyond what the present sources explain to first order. */
function askedOf(rows: readonly ReadingRow[], sources: Float64Array): number[] {
  return rows.map(({ observed, expected, derivatives }) => observed - expected + dot(derivatives, sources));
}

function stepFrom({ rows, sources }: State): Float64Array | null {
  const weights = ReadingSpace.of(rows)?.weigh(askedOf(rows, sources));
  if (!weights) return null;
  return sources.map((x, k) => {
    let target = 0;
    rows.forEach(({ derivatives }, i) => {
      target += (derivatives[k] as number) * (weights[i] as number);
    });
    return target - x;
  });
}

function describe(errors: PointErrors, state: State, ended: SolveEnd, iterations: number): Match {
  const { rows, sources } = state;
  const space = ReadingSpace.of(rows);
  const jacobian = space ? rows.map((row) => row.derivatives) : [];
  const weights = space?.weigh(askedOf(rows, sources)) ?? new Float64Array(rows.length);
  const contradictionOf = (i: number): number => {
    const diagonal = space?.diagonal(i) ?? 0;
    return diagonal === 0 ? 0 : (weights[i] as number) / Math.sqrt(diagonal);
  };
  const posterior = new Posterior(
    errors,
    jacobian,
    rows.map((row) => row.u),
    space,
    sources.length,
  );
  let settled = 0;
  for (let k = 0; k < errors.count; k++) {
    const one = new Float64Array(sources.length);
    one[k] = 1;
    settled += 1 - posterior.variance(one);
  }
  return {
    report: { end: ended, iterations, residual: slopeOf(rows, sources) },
    geometry: state.geometry,
    shifts: state.shifts,
    errors,
    sources,
    settings: state.settings,
    readings: rows.map((row, i) => ({
      name: row.name,
      observed: row.observed,
      fitted: row.expected,
      contradiction: contradictionOf(i),
    })),
    chiSquared: state.cost,
    degreesOfFreedom: rows.length - settingsFitted(rows),
    settled,
    posterior,
  };
}

/** Camber and toe each take one reading for the setting of the wheel. */
const settingsFitted = (rows: readonly ReadingRow[]): number =>
  (["camber", "toe"] as const).filter((kind) => rows.some(({ name }) => name.kind === kind)).length;

/** Largest slope of half the squared misfit by a source. */
function slopeOf(rows: readonly ReadingRow[], sources: Float64Array): number {
  let worst = 0;
  sources.forEach((x, k) => {
    let slope = x;
    for (const { observed, expected, u, derivatives } of rows)
      slope -= ((observed - expected) * (derivatives[k] as number)) / u ** 2;
    worst = Math.max(worst, Math.abs(slope));
  });
  return worst;
}
