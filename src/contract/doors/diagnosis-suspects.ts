import { z } from "zod";
import { computeSuspects, MOST_SIGNS, rankLooks, type SuspectModel, usualStopRule } from "#engines/diagnosis";
import type { Finding } from "#numeric";
import type { Door } from "../door.ts";
import { entriesOf, isObject, type Loose } from "./loose-corner.ts";
import { checkNamed, checkRepeated, type NamedEntry, namesOf } from "./named-entries.ts";

const id = z.string().min(1).max(120);
const ids = z.array(id).max(200);
const chance = z.number().min(0).max(1);

const input = z.strictObject({
  causes: z
    .array(z.strictObject({ id, prior: chance }))
    .min(1)
    .max(200),
  signs: z
    .array(z.strictObject({ id, leak: chance, strengths: z.record(z.string(), chance) }))
    .min(1)
    .max(400)
    .describe("symptoms and what looks show; strengths by cause, leak with none of them (noisy-OR)"),
  complaint: ids.min(1).describe("signs that must all go for the complaint to be cured"),
  present: ids.default([]).describe("further signs that are there"),
  absent: ids.default([]).describe("signs that were looked for and are not there"),
  looks: z
    .array(
      z.strictObject({
        id,
        minutes: z.number().positive(),
        safety: z.boolean().default(false),
        signs: ids.min(1).max(10),
      }),
    )
    .max(100)
    .default([]),
  settled_at: z.number().gt(0).max(1).default(usualStopRule.settledAt),
  least_gain: chance.default(usualStopRule.leastGain),
});
type Input = z.output<typeof input>;

const output = z.strictObject({
  suspects: z
    .array(z.strictObject({ cause: z.string(), cures: z.number(), there: z.number() }))
    .describe(
      "cures: chance that curing it cures the complaint; there: chance that it is there at all; likeliest cure first",
    ),
  two_at_once: z.number(),
  something_else: z.number(),
  observation_probability: z.number(),
  looks: z
    .array(
      z.strictObject({
        id: z.string(),
        minutes: z.number(),
        safety: z.boolean(),
        settles: z.number(),
        settles_per_minute: z.number(),
        gain: z.number(),
      }),
    )
    .describe("open looks, the best first"),
  stop: z.enum(["settled", "nothing-left", "no-gain"]).nullable(),
});

const listed = (doc: Loose, key: string): readonly NamedEntry[] =>
  Array.isArray(doc[key])
    ? doc[key].flatMap((name, i) => (typeof name === "string" ? [{ name, path: `${key}[${i}]` }] : []))
    : [];

/** More signs at once than the sums can hold: those that are there, and those a look may show. */
function checkSignCount(doc: Loose): Finding[] {
  const several = new Set(
    entriesOf(doc.signs).flatMap(([, s]) => {
      const bringing = isObject(s.strengths) ? Object.values(s.strengths).filter((q) => q !== 0).length : 0;
      return typeof s.id === "string" && bringing > 1 ? [s.id] : [];
    }),
  );
  const complaint = listed(doc, "complaint").map((e) => e.name);
  const there = new Set([
    ...complaint,
    ...listed(doc, "present")
      .map((e) => e.name)
      .filter((name) => several.has(name)),
  ]);
  const shown = entriesOf(doc.looks).map(([i, look]) => {
    const signs = Array.isArray(look.signs) ? look.signs.filter((s) => several.has(s) && !there.has(s)) : [];
    return { path: `looks[${i}].signs`, count: there.size + signs.length };
  });
  return [{ path: "present", count: there.size }, ...shown]
    .filter(({ count }) => count > MOST_SIGNS)
    .map(({ path, count }) => ({
      code: "wrong-length",
      path,
      got: `${count} signs with several causes at once`,
      needed: `at most ${MOST_SIGNS}`,
      hint: "Take signs of one complaint at a time.",
    }));
}

function checkSuspectQuestion(doc: unknown): Finding[] {
  if (!isObject(doc)) return [];
  const causes = namesOf(doc.causes, "causes", "id");
  const signs = namesOf(doc.signs, "signs", "id");
  const seen = ["complaint", "present", "absent"].flatMap((key) => listed(doc, key));
  const findings = [causes, signs, namesOf(doc.looks, "looks", "id"), seen].flatMap(checkRepeated);
  findings.push(...checkNamed(seen, signs, "sign"));
  for (const [i, sign] of entriesOf(doc.signs)) {
    const named = isObject(sign.strengths) ? Object.keys(sign.strengths) : [];
    findings.push(
      ...checkNamed(
        named.map((name) => ({ name, path: `signs[${i}].strengths.${name}` })),
        causes,
        "cause",
      ),
    );
  }
  for (const [i, look] of entriesOf(doc.looks)) {
    const shown = Array.isArray(look.signs)
      ? look.signs.flatMap((name, n) => (typeof name === "string" ? [{ name, path: `looks[${i}].signs[${n}]` }] : []))
      : [];
    findings.push(...checkRepeated(shown), ...checkNamed(shown, signs, "sign"));
  }
  return [...findings, ...checkSignCount(doc)];
}

export const diagnosisSuspects: Door<Input> = {
  id: "diagnosis.suspects",
  summary: "Which cure would do: suspects of a complaint, what remains, and the look to take next",
  input: input as unknown as z.ZodType<Input>,
  output,
  relation: "noisy-OR with leak; chance that one cause brings the whole complaint about and nothing else any of it",
  source: "own derivation, docs/method/diagnosis.md; priors and strengths are the asker's",
  accuracy: "1e-12 against every subset of causes (docs/verification.md)",
  check: checkSuspectQuestion,
  compute(wire) {
    const model: SuspectModel = {
      causes: wire.causes,
      signs: wire.signs.map((s) => ({ id: s.id, leak: s.leak, strengths: new Map(Object.entries(s.strengths)) })),
    };
    const seen = { complaint: wire.complaint, present: wire.present, absent: wire.absent };
    const answer = computeSuspects(model, seen);
    if (answer.kind === "impossible")
      return {
        findings: [
          {
            code: "impossible-evidence",
            path: "complaint",
            got: "signs that cannot stand together",
            needed: "an observation whose probability is more than 0",
            hint: "A sign without a leak needs a cause that can be there; a leak of 1 is always there.",
          },
        ],
      };
    const next = rankLooks(model, seen, wire.looks, { settledAt: wire.settled_at, leastGain: wire.least_gain });
    return {
      output: {
        suspects: answer.suspects,
        two_at_once: answer.twoAtOnce,
        something_else: answer.somethingElse,
        observation_probability: answer.observationProbability,
        looks: next.looks.map((l) => ({
          id: l.id,
          minutes: l.minutes,
          safety: l.safety,
          settles: l.settles,
          settles_per_minute: l.settlesPerMinute,
          gain: l.gain,
        })),
        stop: next.stop,
      },
    };
  },
};
