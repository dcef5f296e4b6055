import { describe, expect, it } from "vitest";
import { type LookContent, signsFor } from "#casework";
import { type OwnersPageFacts, printOwnersPage } from "#report";
import { familyFromSilhouette, positionsOf } from "#vehicle";
import { readPdf } from "../../src/report/read-pdf.ts";
import { sampleOwnersPage, sampleSaloon, sampleSigns } from "../samples/sample-owners-page.ts";
import { outsideFrame, overlappingWords, struckWords } from "./crowding.ts";
import { readPageInk } from "./page-ink.ts";

/** Half an inch, points. */
const MARGIN = 36;
const saloon = sampleSaloon();
const six = sampleOwnersPage(saloon, sampleSigns);

const wordsOf = (bytes: Uint8Array): string =>
  readPdf(bytes)
    .texts.join(" ")
    .replaceAll(/[\s\u00a0]+/g, " ");
const crowdingOf = (bytes: Uint8Array): readonly string[] =>
  readPageInk(bytes).flatMap((page) => [
    ...outsideFrame(page, MARGIN),
    ...overlappingWords(page),
    ...struckWords(page),
  ]);

/** Amounts of money in a text, cents. */
const moneyIn = (text: string): readonly number[] =>
  [...text.matchAll(/(\d[\d ]*(?:\.\d\d)?) EUR/g)].map(([, amount = ""]) =>
    Math.round(Number(amount.replaceAll(" ", "")) * 100),
  );

/** Prices in the last column, and the line that adds up the visit. */
const pricesOf = (bytes: Uint8Array) => {
  const words = readPdf(bytes).texts.map((text) => text.replaceAll(/[\s\u00a0]+/g, " ").trim());
  const rows = words.filter((text) => /^\d[\d ]*(\.\d\d)? EUR$/.test(text)).flatMap(moneyIn);
  const sums = words.filter((text) => text.includes("together")).map(moneyIn);
  return { rows, sums };
};

/** Every place of a car with the first sign that can be seen there. */
const everything: readonly (readonly [string, LookContent])[] = positionsOf(saloon).flatMap(({ id, kind }) => {
  const [sign] = signsFor(kind);
  return sign === undefined || sign === "cannot-reach" ? [] : [[id, { kind: "signs", signs: [sign] }] as const];
});
const long = sampleOwnersPage(saloon, everything);

describe("the owner's page", { timeout: 240_000 }, () => {
  it("is one tagged A4 page for six remedies, nothing outside its frame and no words crossed", async () => {
    const bytes = await printOwnersPage(six);
    const { pages, raw, tagged, texts } = readPdf(bytes);
    expect(pages).toBe(1);
    expect(raw).toContain("/Marked true");
    expect(raw).toContain("/Lang (en-GB)");
    const inTags = tagged.map(({ text }) => text).join(" ");
    for (const text of texts) expect(inTags).toContain(text);
    for (const { tag, text } of tagged) if (tag === "Artifact") expect(text).toBe("");
    expect([...raw.matchAll(/\/Alt \(/g)]).toHaveLength(1);
    expect([...raw.matchAll(/\/S \/TR\n/g)]).toHaveLength(1 + 6);
    expect(crowdingOf(bytes)).toEqual([]);
  });

  it("says what was found against whose limit, what the fault does, what waiting does, and what is invented", async () => {
    const seen: readonly (readonly [string, LookContent])[] = [
      ...sampleSigns,
      [
        "rear-right/pads/thickness",
        { kind: "reading", quantity: "pad-thickness", value: 0.0021, u: 0.0002, point: null },
      ],
    ];
    const facts = sampleOwnersPage(saloon, seen);
    const said = wordsOf(await printOwnersPage(facts));
    const effects = facts.appraisal.findings.flatMap(({ effect }) => (effect === null ? [] : [effect.sentence]));
    expect(effects.length).toBeGreaterThan(0);
    expect(effects.some((sentence) => said.includes(sentence))).toBe(true);
    const limits = facts.appraisal.findings.flatMap(({ limitWords }) => (limitWords === null ? [] : [limitWords]));
    expect(limits.length).toBeGreaterThan(0);
    expect(limits.some((words) => said.includes(words.replaceAll("\u00a0", " ")))).toBe(true);
    for (const words of [
      "Waiting until Next service",
      "everything here is invented",
      "not looked at yet",
      "1 of 1",
      "UB 204",
    ])
      expect(said).toContain(words);
    const real = { ...facts, car: { ...facts.car, invented: false } };
    expect(wordsOf(await printOwnersPage(real))).not.toContain("everything here is invented");
  });

  it("prints prices that add up to the sum, the tax on it and the total, to the cent; declining one reprices the rest", async () => {
    const checked = async (facts: OwnersPageFacts) => {
      const { rows, sums } = pricesOf(await printOwnersPage(facts));
      expect(sums).toHaveLength(1);
      const [sum = 0, tax = 0, total = 0] = sums[0] ?? [];
      expect(rows.reduce((all, cents) => all + cents, 0)).toBe(sum);
      expect(sum).toBe(facts.appraisal.plan.totals[0]);
      expect(tax).toBe(Math.round(sum * facts.rates.taxShare));
      expect(total).toBe(sum + tax);
      return rows;
    };
    const all = await checked(six);
    const [first] = six.appraisal.plan.remedies;
    const declined = await checked(
      sampleOwnersPage(saloon, sampleSigns, (plan) => ({ ...plan, declined: [first?.remedy.id ?? ""] })),
    );
    expect(declined).toHaveLength(all.length - 1);
    expect(declined.some((cents) => !all.includes(cents))).toBe(true);
  });

  it("ticks what somebody agreed to, with the name and the day, and names what was declined", async () => {
    const [first, second] = six.appraisal.plan.remedies.map(({ remedy }) => remedy);
    const facts = sampleOwnersPage(saloon, sampleSigns, (plan) => ({
      ...plan,
      agreed: [{ remedy: first?.id ?? "", by: "P. Wren", at: "2026-03-12T10:00:00Z" }],
      declined: [second?.id ?? ""],
    }));
    const said = wordsOf(await printOwnersPage(facts));
    expect(said).toContain("agreed: P. Wren, 2026-03-12");
    expect(said).toContain(`Declined: ${second?.label}`);
  });

  it("says first what must not wait", async () => {
    const parted: LookContent = { kind: "signs", signs: ["separated"] };
    const facts = sampleOwnersPage(saloon, [...sampleSigns, ["front-right/lower-arm/ball-joint", parted]]);
    const said = wordsOf(await printOwnersPage(facts));
    expect(said).toContain("Do not drive this car until the work is done: number 1.");
    expect(said).toContain("Repair first: number 2 before anything else.");
  });

  it("goes on over as many pages as the remedies need, each with its title block and its number", async () => {
    expect(long.appraisal.plan.remedies.length).toBeGreaterThan(12);
    const bytes = await printOwnersPage(long);
    const { pages } = readPdf(bytes);
    const said = wordsOf(bytes);
    expect(pages).toBeGreaterThan(1);
    for (let i = 1; i <= pages; i++) expect(said).toContain(`Page ${i} of ${pages}`);
    expect([...said.matchAll(/Owner's page/g)]).toHaveLength(pages);
    expect([...said.matchAll(/price without tax/g)], "no page without a remedy").toHaveLength(pages);
    expect(crowdingOf(bytes)).toEqual([]);
  });

  it("is one page where what asks for nothing yet can stand on one line each", async () => {
    const facts = sampleOwnersPage(saloon, everything.filter((_, i) => i % 6 === 0).slice(0, 10));
    expect(facts.appraisal.plan.remedies).toHaveLength(8);
    const bytes = await printOwnersPage(facts);
    const said = wordsOf(bytes);
    expect(readPdf(bytes).pages).toBe(1);
    for (const { remedy } of facts.appraisal.plan.remedies) expect(said).toContain(remedy.label);
    expect(said).toContain("Nothing now; looked at again at each visit.");
    expect(crowdingOf(bytes)).toEqual([]);
  });

  it("names on later pages which remedies they go on with, and on the page before where it goes on", async () => {
    const said = wordsOf(await printOwnersPage(long));
    expect(said).toContain("goes on on page 2");
    expect(said).toMatch(/What your car needs: numbers \d+ to \d+/);
  });

  it("stands without a car line, with long names, in miles, and with nothing found", async () => {
    const long = "A name that runs on and on until it is well beyond sixty letters in all";
    const made = familyFromSilhouette({ name: long });
    if ("findings" in made) throw new Error("the silhouette of the test is wrong");
    const shown: readonly OwnersPageFacts[] = [
      { ...six, family: null },
      sampleOwnersPage(saloon, []),
      {
        ...sampleOwnersPage(made.family, [
          ["rear-left/trailing-link/inner-bush", { kind: "signs", signs: ["web-torn"] }],
        ]),
        car: { ...six.car, name: long, registration: long, owner: long, distanceUnit: "mi" },
        rates: { ...six.rates, workshop: long },
      },
    ];
    for (const facts of shown) {
      const bytes = await printOwnersPage(facts);
      expect(readPdf(bytes).pages).toBe(1);
      expect(crowdingOf(bytes)).toEqual([]);
    }
  });

  it("gives the same bytes for the same facts", async () => {
    const [first, second] = [await printOwnersPage(six), await printOwnersPage(six)];
    expect(Buffer.from(first).equals(Buffer.from(second))).toBe(true);
  });
});

describe("what the owner came with, and what was done", () => {
  const closed = (facts: OwnersPageFacts): OwnersPageFacts => ({ ...facts, visit: { ...facts.visit, closed: true } });

  it("names the complaint in the owner's words", async () => {
    const words = wordsOf(await printOwnersPage({ ...six, words: "it clunks over bumps." }));
    expect(words).toContain("You came with: \u201cit clunks over bumps\u201d.");
    expect(wordsOf(await printOwnersPage(six))).not.toContain("You came with");
  });

  it("answers every complaint, and says so where none was made out", async () => {
    const clunk = {
      symptom: "clunk-over-small-sharp-bumps-front",
      label: "Clunk, front",
      state: "not-looked-at",
      words: "not looked at yet",
    } as const;
    const pull = {
      symptom: "pulls-under-braking",
      label: "Pulls",
      state: "found",
      words: "found, and can be behind it: web torn",
    } as const;
    const with2 = {
      ...six,
      words: "it clunks in front, pulls when I brake, and wanders",
      appraisal: { ...six.appraisal, complaints: [clunk, pull] },
    };
    const bytes = await printOwnersPage(with2);
    const words = wordsOf(bytes);
    expect(words).toContain("Clunk, front: not looked at yet.");
    expect(words).toContain("Pulls: found, and can be behind it: web torn. Not taken up yet: \u201cwanders\u201d.");
    const all = { ...with2, words: "it clunks in front, and pulls when I brake" };
    expect(wordsOf(await printOwnersPage(all))).not.toContain("Not taken up yet");
    expect(readPdf(bytes).pages).toBe(1);
    expect(crowdingOf(bytes)).toEqual([]);
    expect(wordsOf(await printOwnersPage({ ...six, words: "it clunks" }))).toContain(
      "No complaint was made out in it yet",
    );
  });

  it("says what was read again at the end, beside what was found", async () => {
    const row = (place: string, asFound: number | null, asLeft: number | null) =>
      ({
        place,
        label: place,
        group: "heights",
        groupLabel: "",
        quantity: "ride-height",
        asFound,
        asLeft,
        limitWords: null,
        foundDecision: null,
        leftDecision: asLeft === null ? null : "within",
      }) as const;
    const corners = ["front-left", "front-right", "rear-left", "rear-right"] as const;
    const all = corners.flatMap((corner) => [
      row(`${corner}/ride-height`, 0.372, 0.38),
      { ...row(`${corner}/tyre/pressure`, 2.1e5, 2.3e5), quantity: "pressure" } as const,
      { ...row(`${corner}/alignment`, -0.02, -0.015), quantity: "camber" } as const,
      { ...row(`${corner}/alignment`, 0.003, 0.002), quantity: "toe" } as const,
    ]);
    const many = await printOwnersPage({ ...six, appraisal: { ...six.appraisal, asLeft: all } });
    expect(readPdf(many).pages).toBe(1);
    expect(crowdingOf(many)).toEqual([]);
    expect(wordsOf(many)).toContain("ride height, mm: front left 372 to 380, front right 372 to 380");
    const asLeft = [row("front-left/ride-height", 0.372, 0.38), row("front-right/ride-height", 0.371, null)];
    const one = sampleOwnersPage(saloon, sampleSigns.slice(0, 1));
    const bytes = await printOwnersPage({ ...one, appraisal: { ...one.appraisal, asLeft } });
    expect(wordsOf(bytes)).toContain(
      "Ride height, as found and now: front left 372 mm, 380 mm; all within their limits.",
    );
    expect(wordsOf(bytes)).not.toContain("front right 371 mm");
    expect(crowdingOf(bytes)).toEqual([]);
  });

  it("says what would make the cost of waiting known where it is not, and what each mark means", async () => {
    const facts = sampleOwnersPage({ ...saloon, life: [] }, [
      ["rear-right/damper/leak", { kind: "signs", signs: ["wet-streams"] }],
    ]);
    const words = wordsOf(await printOwnersPage(facts));
    for (const [known] of words.matchAll(/What waiting costs is not known.{0,160}/g))
      expect(known).toContain("would tell it");
    expect(words).toContain("What waiting costs is not known");
    expect(words).toContain("not looked at yet");
    expect(words).toContain("repair first");
  });

  it("says what was done once the car is signed off, and not what it needs", async () => {
    expect(wordsOf(await printOwnersPage(six))).toContain("What your car needs, and by when");
    const agreed = closed({
      ...six,
      appraisal: {
        ...six.appraisal,
        plan: { ...six.appraisal.plan, remedies: six.appraisal.plan.remedies.map((r) => ({ ...r, agreed: true })) },
      },
    });
    const words = wordsOf(await printOwnersPage(agreed));
    expect(words).toContain("What was done, and what comes next");
    expect(words).toContain("Done at this visit.");
    expect(words).not.toContain("What your car needs");
  });

  it("says of a sum how many parts it is without", async () => {
    const free = {
      ...six,
      appraisal: {
        ...six.appraisal,
        plan: {
          ...six.appraisal.plan,
          remedies: six.appraisal.plan.remedies.map((r) => ({
            ...r,
            remedy: { ...r.remedy, parts: r.remedy.parts.map((part) => ({ ...part, priceCents: null })) },
          })),
        },
      },
    };
    expect(wordsOf(await printOwnersPage(free))).toMatch(
      /together [\d .]+ EUR, without \d+ parts? that (has|have) no price/,
    );
    expect(wordsOf(await printOwnersPage(six))).not.toContain("no price on file");
  });
});
