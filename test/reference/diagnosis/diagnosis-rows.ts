import { readFileSync } from "node:fs";
import { askDoor } from "#contract";
import { computeSuspects } from "#engines/diagnosis";
import { absolute, type Row, relative, Score } from "../score.ts";
import { inventNetwork, sumOverStates } from "./every-state.ts";
import { sumOverSubsets } from "./every-subset.ts";
import { inventCase } from "./invent-case.ts";

const SOURCE = "check-values-diagnosis";

export interface WireNetwork {
  readonly nodes: readonly {
    readonly name: string;
    readonly states: readonly string[];
    readonly parents: readonly string[];
    readonly table: readonly (readonly number[])[];
  }[];
}

interface Answer {
  readonly posterior: Readonly<Record<string, readonly number[]>>;
  readonly evidence_probability: number;
}

export const readClinic = (): WireNetwork =>
  JSON.parse(readFileSync(new URL("chest-clinic.json", import.meta.url), "utf8")) as WireNetwork;

/** Asks the door; throws where it refuses. */
export function askNetwork(network: WireNetwork, evidence: Readonly<Record<string, string>> = {}): Answer {
  const answer = askDoor("diagnosis.network", { ...network, evidence });
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.output as Answer;
}

function scoreClinic(): readonly Row[] {
  const score = new Score("diagnosis.network, chest clinic", SOURCE);
  const clinic = readClinic();
  const check = (
    evidence: Readonly<Record<string, string>>,
    want: Readonly<Record<string, number>>,
    within: number,
  ): void => {
    const { posterior } = askNetwork(clinic, evidence);
    for (const [node, p] of Object.entries(want))
      score.compare(
        `posterior, ${Object.keys(evidence).join(", ") || "nothing"} known`,
        posterior[node]?.[0],
        p,
        absolute(within),
      );
  };
  check({}, { tub: 0.0104, lung: 0.055, bronc: 0.45 }, 5e-5);
  check({}, { either: 0.064828, xray: 0.11029004, dysp: 0.4359706 }, 5e-5);
  check({ asia: "yes", dysp: "yes" }, { tub: 0.087751, lung: 0.099525, bronc: 0.811402 }, 5e-7);
  check({ xray: "yes" }, { tub: 0.092411, lung: 0.488711, bronc: 0.506326, smoke: 0.687754 }, 1e-6);
  check({ dysp: "yes", xray: "yes" }, { tub: 0.113933, lung: 0.621253, bronc: 0.681869 }, 1e-6);
  check({ asia: "yes", dysp: "yes", xray: "no" }, { tub: 0.002249, lung: 0.00255, bronc: 0.862761 }, 1e-6);
  const all = (state: string): number =>
    askNetwork(clinic, { tub: state, lung: state, bronc: state }).evidence_probability;
  score.compare("evidence_probability, joint of three", all("yes"), 0.0003276, absolute(1e-7));
  score.compare("evidence_probability, joint of three", all("no"), 0.5210244, absolute(1e-7));
  score.compare(
    "evidence_probability",
    askNetwork(clinic, { asia: "yes", dysp: "yes" }).evidence_probability,
    0.004501375,
    absolute(5e-10),
  );
  return score.rows();
}

/** Chance of an effect of independent causes by the suspects' own arithmetic: what is observed is the effect. */
function noisyOr(leak: number, inhibitions: Readonly<Record<string, number>>, there: readonly string[]): number {
  const causes = Object.keys(inhibitions).map((id) => ({ id, prior: there.includes(id) ? 1 : 0 }));
  const strengths = new Map(Object.entries(inhibitions).map(([id, q]) => [id, 1 - q]));
  const answer = computeSuspects(
    { causes, signs: [{ id: "effect", leak, strengths }] },
    { complaint: ["effect"], present: [], absent: [] },
  );
  return answer.kind === "impossible" ? 0 : answer.observationProbability;
}

function scoreNoisyOr(): readonly Row[] {
  const score = new Score("noisy-OR", SOURCE);
  const fever = { cold: 0.6, flu: 0.2, malaria: 0.1 };
  const cases: readonly (readonly [readonly string[], number])[] = [
    [[], 0],
    [["cold"], 0.4],
    [["flu"], 0.8],
    [["malaria"], 0.9],
    [["cold", "flu"], 0.88],
    [["cold", "malaria"], 0.94],
    [["flu", "malaria"], 0.98],
    [["cold", "flu", "malaria"], 0.988],
  ];
  for (const [there, p] of cases) score.compare("without leak", noisyOr(0, fever, there), p, absolute(1e-15));
  const leaky = { first: 0.2, second: 0.4 };
  for (const [there, p] of [
    [[], 0.1],
    [["second"], 0.64],
    [["first"], 0.82],
    [["first", "second"], 0.928],
  ] as const)
    score.compare("with leak", noisyOr(0.1, leaky, there), p, absolute(1e-15));
  return score.rows();
}

export const suspectSeeds: readonly number[] = Array.from({ length: 200 }, (_, i) => i + 1);

/** 200 seeded complaints of up to 12 causes against every subset of causes. */
function scoreSuspects(): readonly Row[] {
  const score = new Score("suspects", "every subset of causes");
  for (const seed of suspectSeeds) {
    const { model, seen } = inventCase(seed, 12);
    const want = sumOverSubsets(model, seen);
    const got = computeSuspects(model, seen);
    score.agree("impossible where it is", (got.kind === "impossible") === (want.probability === 0));
    if (got.kind === "impossible" || want.probability === 0) continue;
    score.compare("chance of what was observed", got.observationProbability, want.probability, relative(1e-12));
    score.compare("two at once", got.twoAtOnce, want.twoAtOnce, absolute(1e-12));
    score.compare("something else", got.somethingElse, want.somethingElse, absolute(1e-12));
    model.causes.forEach(({ id }, i) => {
      const suspect = got.suspects.find((s) => s.cause === id);
      score.compare("curing it cures the complaint", suspect?.cures, want.cures[i] as number, absolute(1e-12));
      score.compare("it is there", suspect?.there, want.there[i] as number, absolute(1e-12));
    });
  }
  return score.rows();
}

/** Seeded networks of up to 9 nodes against every combination of states. */
function scoreNetworks(): readonly Row[] {
  const score = new Score("diagnosis.network, invented", "every combination of states");
  for (let seed = 1; seed <= 60; seed++) {
    const { network, evidence } = inventNetwork(seed);
    const want = sumOverStates(network, evidence);
    if (want.probability === 0) continue;
    const got = askNetwork(network, evidence);
    score.compare("evidence_probability", got.evidence_probability, want.probability, relative(1e-12));
    for (const { name } of network.nodes)
      score.compareAll("posterior", got.posterior[name], want.posterior[name] as readonly number[], absolute(1e-12));
  }
  return score.rows();
}

/** Every figure of section "diagnosis network" of the check values, and the program against summing over everything. */
export const scoreDiagnosis = (): readonly Row[] => [
  ...scoreClinic(),
  ...scoreNoisyOr(),
  ...scoreNetworks(),
  ...scoreSuspects(),
];
