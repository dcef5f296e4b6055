import { askDoor } from "#contract";
import {
  combineComponents,
  computeDecisionRisk,
  computeExpanded,
  computeNormalQuantile,
  ofHalfWidth,
  ofProduct,
  ofResolution,
  propagateCorrelated,
} from "#engines/metrology";
import { absolute, type Row, Score } from "../score.ts";

const SOURCE = "check-values-metrology";

interface Conformity {
  readonly probability_within: number;
  readonly accept_from: number | null;
  readonly accept_to: number | null;
  readonly decision: string;
}

/** Asks the door; throws where it refuses. */
export function askConformity(input: object): Conformity {
  const answer = askDoor("metrology.conformity", input);
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.output as Conformity;
}

function scoreDoor(): readonly Row[] {
  const score = new Score("metrology.conformity", SOURCE);
  const chance = (input: object, want: number): void =>
    score.compare(
      "probability_within",
      askConformity({ confidence: 0.95, ...input }).probability_within,
      want,
      absolute(1e-6),
    );
  chance({ reading: -5.47, u: 0.05, upper: -5.4 }, 0.919243);
  chance({ reading: 509.7, u: 8.6, lower: 490 }, 0.98901);
  chance({ reading: 22.03, u: 0.012, lower: 22 }, 0.99379);
  chance({ reading: 0.044, u: 0.004, upper: 0.05 }, 0.933193);
  chance({ reading: 0.22, u: 0.03, lower: -0.05, upper: 0.25 }, 0.841345);
  for (const [guard, beyond] of [
    [2, 0.02275],
    [1.645, 0.049985],
  ] as const) {
    const { probability_within } = askConformity({ reading: 10 - guard * 0.3, u: 0.3, upper: 10, confidence: 0.95 });
    score.compare("chance of being beyond at a guard of w", 1 - probability_within, beyond, absolute(1e-6));
  }
  const disc = { u: 0.012, lower: 22, confidence: 0.95 };
  score.compare("accept_from", askConformity({ ...disc, reading: 22.03 }).accept_from, 22.019738, absolute(1e-6));
  score.agree("decision", askConformity({ ...disc, reading: 22.03 }).decision === "within");
  score.agree("decision", askConformity({ ...disc, reading: 22.0197 }).decision === "too close to call");
  score.agree("decision", askConformity({ ...disc, reading: 21.9803 }).decision === "too close to call");
  score.agree("decision", askConformity({ ...disc, reading: 21.98 }).decision === "beyond");
  const runOut = { reading: 0.044, u: 0.004, upper: 0.05, confidence: 0.95 };
  score.agree("decision", askConformity(runOut).decision === "too close to call");
  for (const [confidence, multiple] of [
    [0.95, 1.6448536],
    [0.99, 2.3263479],
    [0.999, 3.0902323],
  ] as const) {
    const { accept_from } = askConformity({ reading: 5, u: 1, lower: 0, confidence });
    score.compare("multiple of u, one-sided", accept_from, multiple, absolute(1e-7));
  }
  return score.rows();
}

function scoreRisk(): readonly Row[] {
  const score = new Score("consumer's and producer's risk", SOURCE);
  const cases = [
    { sd: 0.5, u: 0.1, limit: 1, guard: 0, conforming: 0.9545, consumer: 0.00677572, producer: 0.01113566 },
    { sd: 0.5, u: 0.1, limit: 1, guard: 0.2, conforming: 0.9545, consumer: 0.0001607, producer: 0.0713249 },
    { sd: 0.12, u: 0.04, limit: 0.2, guard: 0, conforming: 0.904419, consumer: 0.01894221, producer: 0.0372078 },
  ];
  for (const c of cases) {
    const symmetric = (half: number) => ({ lower: -half, upper: half });
    const risk = computeDecisionRisk({ value: 0, u: c.sd }, c.u, symmetric(c.limit), symmetric(c.limit - c.guard));
    score.compare("conforming", risk.conforming, c.conforming, absolute(1e-6));
    score.compare("consumer's risk", risk.wronglyAccepted, c.consumer, absolute(1e-8));
    score.compare("producer's risk", risk.wronglyRefused, c.producer, absolute(1e-8));
  }
  return score.rows();
}

/** The gauge block of GUM H.1, nanometres: length, difference of lengths, expansions, temperatures. */
function gaugeBlock() {
  const length = 50_000_623;
  const expansion = 11.5e-6;
  const difference = combineComponents([
    { name: "repetition", u: 5.8, degreesOfFreedom: 24 },
    { name: "comparator, random", u: 3.9, degreesOfFreedom: 5 },
    { name: "comparator, systematic", u: 6.7, degreesOfFreedom: 8 },
  ]);
  const expansionDifference = ofHalfWidth(1e-6);
  const temperatureDifference = ofHalfWidth(0.05);
  // The mean temperature of the bed is known to 0.2 K, its cycle of half a kelvin is arcsine: half over the root of two.
  const temperature = Math.hypot(0.2, 0.5 / Math.SQRT2);
  const total = combineComponents([
    { name: "standard", u: 25, degreesOfFreedom: 18 },
    { name: "difference", u: difference.u, degreesOfFreedom: difference.degreesOfFreedom },
    { name: "difference of expansions", u: expansionDifference, sensitivity: length * 0.1, degreesOfFreedom: 50 },
    {
      name: "difference of temperatures",
      u: temperatureDifference,
      sensitivity: length * expansion,
      degreesOfFreedom: 2,
    },
  ]);
  const secondOrder = [
    ofProduct(length, expansionDifference, temperature),
    ofProduct(length, ofHalfWidth(2e-6), temperatureDifference),
  ];
  return { length: length + 215, difference, total, secondOrder };
}

function scoreBudget(): readonly Row[] {
  const score = new Score("uncertainty budget", SOURCE);
  const { length, difference, total, secondOrder } = gaugeBlock();
  score.compare("gauge block, length, nm", length, 50_000_838, absolute(0.5));
  score.compare("gauge block, u of the difference, nm", difference.u, 9.681942, absolute(5e-7));
  score.compare(
    "gauge block, degrees of freedom of the difference",
    difference.degreesOfFreedom,
    25.447,
    absolute(5e-4),
  );
  const part = (name: string) => total.parts.find((p) => p.name === name)?.u;
  score.compare("gauge block, parts, nm", part("difference of temperatures"), 16.599, absolute(5e-4));
  score.compare("gauge block, parts, nm", part("difference of expansions"), 2.88679, absolute(5e-5));
  score.compare("gauge block, u, nm", total.u, 31.66388, absolute(5e-6));
  score.compare("gauge block, effective degrees of freedom", total.degreesOfFreedom, 16.75, absolute(5e-3));
  const expanded = computeExpanded(total, 0.99);
  score.compare("gauge block, multiple at 99 %", expanded.multiple, 2.92, absolute(5e-3));
  // The guide multiplies by u rounded to 32 nm, which moves the last digit.
  score.compare("gauge block, plus or minus at 99 %, nm", expanded.plusMinus, 93, absolute(1));
  score.compareAll("gauge block, parts of second order, nm", secondOrder, [11.726, 1.667], absolute(5e-4));
  score.compare("gauge block, u with second order, nm", Math.hypot(total.u, ...secondOrder), 33.81, absolute(5e-3));
  const control = combineComponents([
    { name: "between", u: 0.19, sensitivity: 1.44 },
    { name: "within", u: 0.11, sensitivity: 1.44 },
  ]);
  score.compare("control sample, percent", control.u, 0.31614, absolute(5e-6));
  score.compareAll(
    "control sample, ends",
    [33.98 * (1 - control.u / 100), 33.98 * (1 + control.u / 100)],
    [33.87, 34.09],
    absolute(5e-3),
  );
  score.compare("resolution of 0.01 mm", ofResolution(0.01), 0.00288675, absolute(1e-8));
  score.compare("normal quantile", computeNormalQuantile(0.975), 1.959963984540054, absolute(1e-14));
  return score.rows();
}

/** The impedance of GUM H.2: R, X and Z from voltage, current and phase, with their correlations. */
function scoreImpedance(): readonly Row[] {
  const score = new Score("correlated propagation", SOURCE);
  const [v, i, phi] = [4.999, 0.019661, 1.04446];
  const z = v / i;
  const [r, x] = [z * Math.cos(phi), z * Math.sin(phi)];
  const jacobian = [
    [r / v, -r / i, -x],
    [x / v, -x / i, r],
    [z / v, -z / i, 0],
  ];
  const correlation = [
    [1, -0.36, 0.86],
    [-0.36, 1, -0.65],
    [0.86, -0.65, 1],
  ];
  const out = propagateCorrelated(jacobian, [3.2e-3, 9.5e-6, 7.5e-4], correlation);
  // The last printed digit; the inputs are given to two digits, which moves the second digit of u and r.
  score.compareAll("R, X, Z, ohm", [r, x, z], [127.732, 219.847, 254.26], absolute(1e-3));
  score.compare("u of R, ohm", out.u[0], 0.07, absolute(1.5e-3));
  score.compareAll("u of X and Z, ohm", out.u.slice(1), [0.3, 0.24], absolute(5e-3));
  const at = (a: number, b: number) => out.correlation[a]?.[b];
  score.compareAll("correlations R-X, R-Z, X-Z", [at(0, 1), at(0, 2), at(1, 2)], [-0.59, -0.49, 0.99], absolute(1e-2));
  return score.rows();
}

/** Every figure of section "uncertainty and decisions" of the check values. */
export const scoreMetrology = (): readonly Row[] => [
  ...scoreDoor(),
  ...scoreRisk(),
  ...scoreBudget(),
  ...scoreImpedance(),
];
