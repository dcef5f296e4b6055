import type {
  Appraisal,
  AppraisedFinding,
  CarSuspects,
  FaultEffect,
  Figure,
  JobCard,
  JudgedAsLeft,
  Shake,
} from "#casework";
import { readingUnits } from "../cases/reading-unit.ts";
import { exactMm } from "../family/exact-figure.ts";
import { formatPlan } from "./plan-form.ts";

type Wire = Readonly<Record<string, unknown>>;

const unitKeys: Readonly<Record<Figure["unit"], string>> = {
  deg: "deg",
  mm: "mm",
  N: "n",
  "deg per m": "deg_per_m",
  percent: "percent",
  times: "times",
  "km/h": "km_per_h",
  Hz: "hz",
};

const formatFigure = (figure: Figure): Wire => {
  const unit = unitKeys[figure.unit];
  return {
    key: figure.key,
    label: figure.label,
    [`value_${unit}`]: figure.value,
    [`u_${unit}`]: figure.u,
    [`range_${unit}`]: figure.range,
    [`band_95_${unit}`]: figure.band,
    sign_sure: figure.signSure,
    settle: figure.settle,
    rung: figure.rung,
    inputs: figure.inputs,
    relation: figure.relation,
    source: figure.source,
  };
};

/** A hard point or a rate, as the page lists it behind every figure. */
const formatPart = ({ kind, label, value, known }: FaultEffect["parts"][number]): Wire => ({
  kind,
  label,
  value,
  known,
});

const formatEffect = (effect: FaultEffect): Wire => ({
  sentence: effect.sentence,
  judged_against: effect.judgedAgainst,
  how_sure: effect.howSure,
  narrows: effect.narrows,
  what_else: effect.whatElse,
  computed_so: effect.computedSo,
  beyond_tyre: effect.beyondTyre,
  rung: effect.rung,
  invented: effect.invented,
  torn_share: effect.tornShare,
  other_places_of_rest: effect.others.length,
  braking_n: effect.question.condition.braking,
  lateral_n: effect.question.condition.lateral,
  contact_rise_mm: exactMm(effect.question.condition.contactRise),
  headline: formatFigure(effect.headline),
  figures: effect.figures.map(formatFigure),
  parts: effect.parts.map(formatPart),
  cautions: effect.cautions,
});

const formatShake = (shake: Shake): Wire => ({
  sentence: shake.sentence,
  hidden: shake.hidden,
  judged_against: shake.judgedAgainst,
  how_sure: shake.howSure,
  what_else: shake.whatElse,
  computed_so: shake.computedSo,
  headline: formatFigure(shake.headline),
  figures: shake.figures.map(formatFigure),
  parts: shake.parts.map(formatPart),
  cautions: shake.cautions,
});

const formatFinding = (finding: AppraisedFinding): Wire => ({
  place: finding.place,
  label: finding.label,
  grade: finding.grade,
  not_known: finding.notKnown,
  too_close_to_call: finding.closeToCall,
  found: finding.found,
  limit: finding.limitWords,
  how_sure: finding.howSure,
  caveat: finding.caveat,
  reasons: finding.reasons.map(({ about, text, grade, closeToCall, judgement, towards }) => ({
    about,
    text,
    grade,
    too_close_to_call: closeToCall,
    towards,
    against: judgement?.against ?? null,
    decision: judgement?.decision ?? null,
    probability_within: judgement && "probabilityWithin" in judgement ? judgement.probabilityWithin : null,
  })),
  means: finding.means.map(({ cause, label, state, says, places, chance }) => ({
    cause,
    label,
    state,
    says,
    places,
    chance,
  })),
  advice: finding.advice,
  effect: finding.effect && formatEffect(finding.effect),
  shake: finding.shake && formatShake(finding.shake),
  no_shake: finding.noShake,
});

const formatSuspects = (suspects: CarSuspects): Wire => ({
  suspects: suspects.suspects.map((s) => ({
    cause: s.cause,
    label: s.label,
    cures: s.cures,
    there: s.there,
    before: s.before,
    places: s.places,
    speaks_for: s.speaksFor,
    speaks_against: s.speaksAgainst,
    word: s.word && { word: s.word.word, reason: s.word.reason, by: s.word.by, at: s.word.at },
    moves: s.moves.map(({ words, without, times }) => ({ words, without, times })),
  })),
  two_at_once: suspects.twoAtOnce,
  something_else: suspects.somethingElse,
  next_looks: (suspects.next?.looks ?? []).map(({ id, minutes, settles, gain }) => ({
    cause: id,
    minutes,
    settles,
    gain,
  })),
  stop: suspects.next?.stop ?? null,
  left_out: suspects.leftOut,
  note: suspects.note,
});

const formatJobCard = (card: JobCard): Wire => ({
  steps: card.steps.map((step) => ({
    step: step.id,
    kind: step.kind,
    label: step.label,
    place: step.place,
    support: step.support,
    needs_ride_height: step.needsRideHeight,
    cautions: step.cautions,
    fasteners: step.fasteners.map((f) => ({
      item: f.item,
      label: f.label,
      count: f.count,
      policy: f.policy,
      stages:
        f.stages?.map((stage) =>
          "torque" in stage ? { torque_nm: stage.torque } : { angle_deg: readingUnits.toe.toOutside(stage.angle) },
        ) ?? null,
      owner: f.owner,
      source: f.source,
    })),
    done_by: step.record?.doneBy ?? null,
    at: step.record?.at ?? null,
    hub_to_arch_mm: step.record?.hubToArch == null ? null : exactMm(step.record.hubToArch),
  })),
  hardware: card.hardware,
  done: card.done,
});

const formatAsLeft = (row: JudgedAsLeft): Wire => {
  const { place, label, quantity, asFound, asLeft, limitWords, foundDecision, leftDecision } = row;
  const { suffix, toOutside } = readingUnits[quantity];
  const unit = suffix === "" ? "" : `_${suffix}`;
  return {
    place,
    label,
    quantity,
    [`as_found${unit}`]: asFound === null ? null : toOutside(asFound),
    [`as_left${unit}`]: asLeft === null ? null : toOutside(asLeft),
    limit: limitWords,
    found_decision: foundDecision,
    left_decision: leftDecision,
  };
};

/** An appraisal as JSON: units in the keys, chances from 0 to 1, money in hundredths of the currency without tax. */
export const formatAppraisal = (appraisal: Appraisal): Wire => ({
  findings: appraisal.findings.filter((f) => f.grade !== null || f.notKnown).map(formatFinding),
  not_looked_at: appraisal.findings.filter((f) => f.grade === null && !f.notKnown).map((f) => f.place),
  no_remedy_on_file: appraisal.uncured.map((f) => f.place),
  accepted_without_work: appraisal.unplanned,
  suspects: formatSuspects(appraisal.suspects),
  complaints: appraisal.complaints.map(({ symptom, label, state, words }) => ({ symptom, label, state, words })),
  plan: formatPlan(appraisal),
  job_card: formatJobCard(appraisal.jobCard),
  hand_over: {
    gates: appraisal.gates,
    reteach: appraisal.reteach,
    as_left: appraisal.asLeft.map(formatAsLeft),
    axles_as_left: appraisal.axlesAsLeft.map(({ place, label, asFound, asLeft }) => ({
      place,
      label,
      as_found: asFound,
      as_left: asLeft,
    })),
  },
  stages: appraisal.stages.map(({ stage, mark, blockedBy }) => ({ stage, mark, blocked_by: blockedBy })),
});
