import {
  type Appraisal,
  type AppraisedFinding,
  type CarDocument,
  type CarPace,
  cautionsFor,
  complaintWords,
  fastenerWords,
  formatChance,
  formatKm,
  formatMoney,
  formatNumber,
  foundAt,
  isWorthSaying,
  lifeWords,
  NOT_KNOWN,
  notOnFileWords,
  notTakenUpWords,
  type PlannedRemedy,
  paceWords,
  partsWords,
  planStatusWords,
  quantityForms,
  reasonHead,
  reasonOutcome,
  symptoms,
  tellingLooks,
  torqueWords,
  usualPlan,
  type VisitRecord,
  visitDateWords,
  waitingWords,
} from "#casework";
import { gradeWords, NOT_LOOKED_AT, TOO_CLOSE } from "#drawing";

/** Suspects below this chance are summed up in one line. */
const LEAST_SUSPECT = 0.02;
const MOST_LOOKS = 3;

const heading = (words: string): readonly string[] => ["", words.toUpperCase(), "-".repeat(words.length)];

const gradeLine = ({ grade, closeToCall }: Pick<AppraisedFinding, "grade" | "closeToCall">): string =>
  grade === null ? NOT_LOOKED_AT : `${gradeWords[grade]}${closeToCall ? `, ${TOO_CLOSE.toLowerCase()}` : ""}`;

const meaningLines = ({ means, advice }: AppraisedFinding): readonly string[] => [
  ...means.map(
    ({ label, says, chance }) =>
      `    can be: ${label.toLowerCase()}${chance === null ? "" : `, ${formatChance(chance)}`}; ${says}`,
  ),
  ...(advice === null ? [] : [`    ${advice}`]),
];

const doesLines = ({ effect, shake, noShake }: AppraisedFinding): readonly string[] =>
  [
    ...[shake?.sentence, shake?.hidden, shake?.howSure, noShake],
    ...[effect?.sentence, effect?.beyondTyre, effect?.howSure, effect?.narrows],
  ].flatMap((words) => (words == null ? [] : [`    ${words}`]));

const findingLines = (finding: AppraisedFinding): readonly string[] => [
  `${finding.notKnown ? NOT_KNOWN : gradeLine(finding)}: ${foundAt(finding)}`,
  ...finding.reasons.flatMap((reason) =>
    reason.judgement === null ? [] : [`    ${reasonHead(reason)}: ${reason.text}; ${reasonOutcome(reason)}`],
  ),
  ...(finding.caveat === null ? [] : [`    ${finding.caveat}`]),
  ...meaningLines(finding),
  ...doesLines(finding),
];

const findingsText = ({ findings, notLookedAt, uncured }: Appraisal): readonly string[] => {
  const seen = findings.filter((f) => f.grade !== null || f.notKnown);
  const worth = seen.filter(isWorthSaying);
  return [
    ...heading("Findings"),
    ...worth.flatMap(findingLines),
    `${seen.length - worth.length} places looked at or read and sound; ${notLookedAt} not looked at.`,
    ...[notOnFileWords(seen)].filter((words) => words !== ""),
    ...(uncured.length === 0 ? [] : [`No remedy on file for: ${uncured.map(foundAt).join("; ")}.`]),
  ];
};

const complaintsText = ({ complaints }: Appraisal, words: string): readonly string[] => {
  const chosen = complaints.map(({ symptom }) => symptom);
  const lines = [...complaints.map(complaintWords), notTakenUpWords(words, symptoms, chosen)];
  const said = lines.filter((line) => line !== "");
  return said.length === 0 ? [] : [...heading("Complaints"), ...said];
};

const suspectsText = ({ suspects }: Appraisal): readonly string[] => {
  if (suspects.note !== null) return [...heading("Suspects"), suspects.note];
  const told = suspects.suspects.filter((s) => s.cures >= LEAST_SUSPECT);
  const rest = suspects.suspects.filter((s) => s.cures < LEAST_SUSPECT);
  return [
    ...heading("Suspects"),
    "Chance that curing it alone cures the complaint; in brackets that it is there at all. Start values are invented.",
    ...told.map((s) => `${formatChance(s.cures).padStart(5)} (${formatChance(s.there)})  ${s.label}`),
    `${formatChance(rest.reduce((sum, s) => sum + s.cures, 0)).padStart(5)}  one of ${rest.length} others`,
    `${formatChance(suspects.twoAtOnce).padStart(5)}  two at once`,
    `${formatChance(suspects.somethingElse).padStart(5)}  something else`,
    ...(suspects.leftOut.length === 0 ? [] : [`Left out, too many at once: ${suspects.leftOut.join("; ")}.`]),
    ...tellingLooks(suspects)
      .slice(0, MOST_LOOKS)
      .map((look, i) => {
        const label = suspects.suspects.find((s) => s.cause === look.id)?.label ?? look.id;
        return `${i === 0 ? "Look next" : "then     "}  ${label}, ${look.minutes} min: settles it with ${formatChance(look.settles)}`;
      }),
  ];
};

const priceWords = (planned: PlannedRemedy, currency: string): string =>
  `${formatMoney(planned.price?.total ?? 0, currency)}${planned.priceComplete ? "" : ", parts not on file"}`;

const remedyLines = (planned: PlannedRemedy, appraisal: Appraisal, currency: string): readonly string[] => [
  `  ${planned.remedy.label} (${planned.remedy.id}), ${gradeLine(planned.remedy).toLowerCase()}${planned.price === null ? "" : `: ${priceWords(planned, currency)}`}${planned.broughtBy === null ? "" : `: done with ${planned.broughtBy.name}, in that price`}${planned.agreed ? ", agreed" : ""}`,
  ...[planned.why, lifeWords(planned), waitingWords(planned, appraisal.plan, currency)]
    .filter((words) => words !== "")
    .map((words) => `    ${words}`),
];

const isComplete = ({ remedies }: Appraisal["plan"], visit: number): boolean =>
  remedies.every((r) => r.visit !== visit || r.priceComplete);

const usualVisits = (odometerKm: number | null): readonly string[] =>
  usualPlan(odometerKm ?? 0).visits.map((visit) => `${visit.label} at ${formatKm(visit.odometerKm)}`);

const planText = (appraisal: Appraisal, currency: string, pace: CarPace): readonly string[] => {
  const { plan, planDocument } = appraisal;
  const later = plan.remedies.filter((r) => r.visit === null);
  return [
    ...heading("Plan"),
    ...plan.visits.flatMap((visit, i) => [
      `${visit.label}, ${visitDateWords(planDocument.visits[i] ?? visit, pace)}, ${formatKm(visit.odometerKm)}: ${formatMoney(visit.total, currency)} without tax (${partsWords(visit.parts, isComplete(plan, i), currency)}, labour ${formatNumber(visit.hours, 1)} h ${formatMoney(visit.labour, currency)}, visit ${formatMoney(visit.visitCost, currency)})`,
      ...plan.remedies.filter((r) => r.visit === i).flatMap((r) => remedyLines(r, appraisal, currency)),
      ...visit.shared.map(
        (s) => `  counted once: ${s.label}, ${formatNumber(s.hours, 1)} h, shared by ${s.among.join(", ")}`,
      ),
    ]),
    ...(later.length === 0 ? [] : ["Not within this plan:"]),
    ...later.flatMap((r) => remedyLines(r, appraisal, currency)),
    ...appraisal.covered.map(({ label, id, why }) => `Left out: ${label} (${id}). ${why}`),
    ...appraisal.unplanned.map(({ label, why }) => `Accepted as the cause, and not planned: ${label}: ${why}.`),
    planStatusWords(plan, currency),
    paceWords(pace),
    ...(plan.visits.length === 0 && plan.remedies.length > 0
      ? [`The usual ones: ${usualVisits(pace.visit.odometerKm).join(", ")}.`]
      : []),
  ];
};

const jobText = ({ jobCard }: Appraisal): readonly string[] => {
  if (jobCard.steps.length === 0) return [...heading("Job card"), "Nothing is agreed yet, so there are no steps."];
  const numbers = [...new Set(jobCard.steps.flatMap((s) => s.cautions))].sort((a, b) => a - b);
  return [
    ...heading("Job card"),
    ...jobCard.steps.flatMap((step, i) => [
      `${step.record ? "[x]" : "[ ]"} ${i + 1}. ${step.label}${step.place === null ? "" : `, ${step.place}`}${step.record ? `; ${step.record.doneBy}, ${step.record.at}` : ""}`,
      ...(step.support === null ? [] : [`      hold: ${step.support}`]),
      ...step.fasteners.map((f) => `      ${f.count} x ${f.label}: ${torqueWords(f)}; ${fastenerWords(f)}`),
      ...(step.cautions.length === 0 ? [] : [`      caution ${step.cautions.join(", ")}`]),
    ]),
    ...jobCard.hardware.map(
      (h) => `In the box: ${h.must} x ${h.label}, new${h.may > 0 ? `; ${h.may} more if seized` : ""}`,
    ),
    ...cautionsFor(numbers).map((c) => `Caution ${c.number}, ${c.when}: ${c.text}`),
  ];
};

const handOverText = ({ gates, reteach, asLeft, axlesAsLeft }: Appraisal): readonly string[] => [
  ...heading("Hand-over"),
  ...asLeft.map(({ label, quantity, asFound, asLeft: left, limitWords, foundDecision, leftDecision }) => {
    const { factor, decimals, unit } = quantityForms[quantity];
    const shown = (value: number | null): string =>
      value === null ? "not taken" : `${formatNumber(value * factor, decimals)}${unit === "°" ? "" : " "}${unit}`;
    const came = (decision: string | null): string => (decision === null ? "" : ` (${decision})`);
    return `${label}: as found ${shown(asFound)}${came(foundDecision)}, as left ${shown(left)}${came(leftDecision)}; ${limitWords ?? "limit not on file"}`;
  }),
  ...axlesAsLeft.map(
    (axle) => `${axle.label}: as found ${axle.asFound ?? "not taken"}; as left ${axle.asLeft ?? "not taken"}`,
  ),
  ...gates.map(
    (gate) => `${gate.state.replaceAll("-", " ").padEnd(14)} ${gate.label}${gate.why === "" ? "" : `: ${gate.why}`}`,
  ),
  ...reteach.map((item) => `${item.need.padEnd(18)} ${item.item}: ${item.why}`),
];

/** The whole appraisal as text for a terminal. */
export const formatAppraisalText = (car: CarDocument, record: VisitRecord, appraisal: Appraisal): string => {
  const { visit, family, rates } = record;
  const invented = car.invented || family?.invented === true;
  const odometer = visit.odometerKm === null ? "odometer not read" : formatKm(visit.odometerKm);
  return [
    [car.name, car.registration, odometer, visit.date].filter((part) => part !== "").join(", "),
    family === null ? "No family is chosen, so nothing is judged." : `Family ${family.name}`,
    ...(invented ? ["Everything here is invented."] : []),
    ...(record.work.origin === "usual" && family !== null
      ? ["Work is the usual for these layouts, not this family's own: hours, prices and torques are start values."]
      : []),
    ...findingsText(appraisal),
    ...complaintsText(appraisal, record.enquiry?.words ?? ""),
    ...suspectsText(appraisal),
    ...planText(appraisal, rates.currency, { visit, year: car.year }),
    ...jobText(appraisal),
    ...handOverText(appraisal),
  ].join("\n");
};
