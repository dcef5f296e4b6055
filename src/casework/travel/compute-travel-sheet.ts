import type { WheelBand } from "#engines/linkage";
import { type Finding, type Jet, subtractJets } from "#numeric";
import { degreesFromRadians, mmFromMetres } from "#quantity";
import { axleAndSide, positionsOf } from "#vehicle";
import { bandOfAngles } from "../fault/change-band.ts";
import { computeFaultEffect, poseOf } from "../fault/compute-fault-effect.ts";
import { firmerWords } from "../fault/firmer-rubber.ts";
import { formatNumber } from "../fault/format-figure.ts";
import { isSignSure } from "../fault/settle.ts";
import type { Condition, FaultEffect, RubberFault } from "../fault-effect.ts";
import { bindingWords } from "./binding-words.ts";
import { type CornerWalk, type WalkPoint, walkCorner } from "./corner-walk.ts";
import { travelFigureForm } from "./figure-forms.ts";
import { firmFactors, rubberOf } from "./firm-corner.ts";
import { rackTheSameWay } from "./rack-direction.ts";
import { compareRows, describeRows, describeRubber } from "./row-words.ts";
import { everyRubberRow, type FirmWalks, rubberRow } from "./rubber-row.ts";
import { settleBetween, type WalkedRow } from "./settle-between.ts";
import type {
  TravelChange,
  TravelFigure,
  TravelLine,
  TravelPlot,
  TravelRow,
  TravelSheet,
  TravelSheetQuestion,
  TravelSubject,
} from "./travel-sheet.ts";

/** Changes are said so far up and down, metres, or at the stop where that comes first. */
const SAID_AT = 0.05;
const MOST_SUBJECTS = 4;
/** Heights are told apart no closer than this, metres. */
const SAME_HEIGHT = 1e-6;

interface Named extends Pick<TravelLine, "words" | "drawnAs"> {
  readonly subject: TravelSubject;
}

/** A whole corner, walked. */
interface Walked extends Named {
  readonly walk: CornerWalk;
  /** Beside what and between what, where every rubber of it is firmer; null of a sound corner. */
  readonly firm: FirmWalks | null;
}

/** What one fault does, as Geometry computes it. */
interface Affected extends Named {
  readonly effect: FaultEffect;
}

type Computed = Walked | Affected;

/**
 * Figures of one corner over its travel for up to four states beside each other: sound, with one place torn, loose or firmer,
 * lowered, and the same corner of another car line. Toe, camber and the place of the wheel are balanced with the rubber
 * at the asked force; the others are those of the rigid linkage. Findings where one of the states cannot be computed.
 */
export function computeTravelSheet(
  question: TravelSheetQuestion,
): { sheet: TravelSheet } | { findings: readonly Finding[] } {
  if (question.subjects.length < 1 || question.subjects.length > MOST_SUBJECTS)
    return {
      findings: [
        {
          code: "out-of-range",
          path: "subjects",
          got: String(question.subjects.length),
          needed: `one to ${MOST_SUBJECTS} states`,
          hint: "More lines than that cannot be told apart.",
        },
      ],
    };
  const computed: Computed[] = [];
  for (const subject of question.subjects) {
    const one = computeSubject(question, subject);
    if ("findings" in one) return one;
    computed.push(one);
  }
  const rows = computed.flatMap((c) => ("walk" in c && c.firm === null ? [rowOf(c, question)] : []));
  const rubber = computed.flatMap((c) => {
    if ("effect" in c) return [rubberRow(c.words, c.effect, SAID_AT)];
    return c.firm === null ? [] : [everyRubberRow(c.words, c.firm, question.condition.contactRise, SAID_AT)];
  });
  const verdicts = compareRows(question, rows);
  return {
    sheet: {
      plots: question.figures.map((figure) => plotOf(figure, computed)),
      rows,
      rubber,
      poses: computed.map((c) => poseAt(c, question)),
      sentences: [
        ...describeRows(question, rows),
        ...rubber.map((row) => describeRubber(row, question.condition.contactRise)),
        ...verdicts,
      ],
      verdicts,
      open: openBetween(question, computed, rows),
    },
  };
}

/** What is too close to call between this car line and the one beside it; nothing where none stands beside. */
function openBetween(
  { family }: TravelSheetQuestion,
  computed: readonly Computed[],
  rows: readonly TravelRow[],
): TravelSheet["open"] {
  const [own, beside] = (["sound", "beside"] as const).map((kind): WalkedRow | null => {
    const walked = computed.find((one): one is Walked => "walk" in one && one.subject.kind === kind);
    const row = rows.find(({ subject }) => subject === kind);
    if (!walked || !row) return null;
    return {
      name: walked.subject.kind === "beside" ? walked.subject.family.name : family.name,
      walk: walked.walk,
      row,
    };
  });
  return own && beside ? settleBetween(own, beside) : [];
}

function computeSubject(
  question: TravelSheetQuestion,
  subject: TravelSubject,
): Computed | { findings: readonly Finding[] } {
  const { family, corner, condition } = question;
  const level = { ...condition, contactRise: 0 };
  if (subject.kind === "rubber") {
    const { position, fault } = subject;
    const answer = computeFaultEffect(family, { corner, position, fault, condition });
    if ("findings" in answer) return answer;
    const place = positionsOf(family).find(({ id }) => id === position);
    const at = place ? lowerFirst(place.label) : position;
    const { effect } = answer;
    const what = faultWords(fault);
    return { subject, words: `${what}: ${at}`, drawnAs: fault.kind, effect };
  }
  if (subject.kind === "every-rubber") return computeEveryRubber(question, subject, level);
  const of = subject.kind === "beside" ? subject.family : family;
  const lowered = subject.kind === "lowered" ? subject.by : 0;
  const { axle } = axleAndSide(corner);
  const rack = of === family ? level.rack : rackTheSameWay(level.rack, family[axle], of[axle]);
  const walk = walkCorner(of, corner, { ...level, rack }, lowered);
  if (walk.points.length < 2) return { findings: [noBalance(of.name)] };
  const words =
    subject.kind === "beside"
      ? subject.family.name
      : subject.kind === "lowered"
        ? `lowered ${mmFromMetres(subject.by).toFixed(0)} mm`
        : ownWords(question);
  return { subject, words, walk, firm: null };
}

function faultWords(fault: RubberFault): string {
  if (fault.kind === "firmer") return firmerWords(fault);
  return fault.kind === "loose" ? `loose ${formatNumber(mmFromMetres(fault.play), 1)} mm` : fault.kind;
}

const noBalance = (name: string): Finding => ({
  code: "no-equilibrium",
  path: "condition",
  got: `no balance of ${name} under this force`,
  needed: "a condition the corner can take",
  hint: "Lower the force, lower the car less, or bring the rack nearer to its middle.",
});

/** The corner with every rubber firmer: all of it together in the middle, and at either end of the range. */
function computeEveryRubber(
  { family, corner }: TravelSheetQuestion,
  subject: Extract<TravelSubject, { kind: "every-rubber" }>,
  level: Condition,
): Computed | { findings: readonly Finding[] } {
  const factors = firmFactors(subject.fault);
  if ("findings" in factors) return factors;
  const walkWith = (factor: number): CornerWalk =>
    walkCorner(family, corner, level, 0, (model) => model.softAt(rubberOf(family, corner, model.assembly), factor));
  const [walk, ...ends] = [walkWith(factors.middle), ...factors.ends.map(walkWith)];
  if (walk.points.length < 2) return { findings: [noBalance(family.name)] };
  const firm = { firmer: subject.fault, sound: walkWith(1), walk, ends };
  return { subject, words: `every rubber ${firmerWords(subject.fault)}`, drawnAs: "all firmer", walk, firm };
}

/** The sound corner bears the name of its car line where another one stands beside. */
const ownWords = ({ family, subjects }: TravelSheetQuestion): string =>
  subjects.some(({ kind }) => kind === "beside") ? family.name : "sound";

const lowerFirst = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

function plotOf(figure: TravelFigure, computed: readonly Computed[]): TravelPlot {
  const { title, unit } = travelFigureForm(figure);
  const lines: TravelLine[] = [];
  const leftOut: string[] = [];
  for (const one of computed) {
    const line = "walk" in one ? lineOfWalk(figure, one) : lineOfEffect(figure, one, one.effect);
    if (typeof line === "string") leftOut.push(line);
    else lines.push(line);
    if (typeof line !== "string" && one.subject.kind === "lowered") leftOut.push(`${one.words}: ends at its bump stop`);
  }
  return { figure, title, unit, lines, leftOut };
}

function lineOfEffect(figure: TravelFigure, one: Computed, effect: FaultEffect): TravelLine | string {
  if (figure !== "toe" && figure !== "camber") return `${one.words}: drawn for toe and camber only`;
  const line = effect.curves
    .find(({ quantity }) => quantity === figure)
    ?.lines.find(({ state }) => state === effect.question.fault.kind);
  if (!line) return `${one.words}: no balance over travel`;
  return { ...line, ...namesOf(one), subject: one.subject.kind, rises: effect.rises };
}

const namesOf = ({ words, drawnAs }: Named): Pick<TravelLine, "words" | "drawnAs"> => ({
  words,
  ...(drawnAs === undefined ? {} : { drawnAs }),
});

const sdOf = (walk: CornerWalk, jet: Jet): number => walk.state.band.jets.deviation(jet);

/** A line of figures over travel, with the band that holds both ends of a range. */
function lineOfWalk(figure: TravelFigure, one: Walked): TravelLine | string {
  const { walk } = one;
  const ends = one.firm?.ends ?? [];
  const { rigid } = travelFigureForm(figure);
  const line = (points: readonly { rise: number; value: number; low: number; high: number }[]): TravelLine => ({
    state: one.subject.kind === "every-rubber" ? "firmer" : "sound",
    ...namesOf(one),
    subject: one.subject.kind,
    rises: points.map((p) => p.rise),
    values: points.map((p) => p.value),
    low: points.map((p) => p.low),
    high: points.map((p) => p.high),
  });
  if (rigid) {
    if (one.subject.kind === "every-rubber") return `${one.words}: drawn for toe, camber and wheelbase only`;
    const rest = walk.points.find(({ rise }) => rise === 0)?.rigid ?? null;
    const band = figure === "roll-centre" ? walk.model.rigidBand() : null;
    if (figure === "roll-centre" && band === null)
      return `${one.words}: no band of it is computed for a layout of several bodies`;
    const points = walk.points.flatMap(({ rise, rigid: position }) => {
      const value = position && rest ? rigid(position, rest) : null;
      if (!position || value === null) return [];
      const at = band?.solve(position.pose.t[2] as number) ?? null;
      const sd = at && !("foldAt" in at) ? mmFromMetres(at.rollCentre.sd) : 0;
      const [low, high] = bandOfAngles([{ value, sd }]);
      return [{ rise, value, low, high }];
    });
    return points.length > 1 ? line(points) : `${one.words}: this axle has no such figure`;
  }
  return line(
    walk.points.flatMap(({ rise }) => {
      const all = [walk, ...ends].flatMap((one) => valueAt(figure, one, rise) ?? []);
      const [middle] = all;
      if (!middle || all.length <= ends.length) return [];
      const [low, high] = bandOfAngles(all);
      return [{ rise, value: middle.value, low, high }];
    }),
  );
}

/** Toe, camber (degrees) or the place of the wheel from ride height (mm) at one of the walk's points, with its deviation. */
function valueAt(figure: TravelFigure, walk: CornerWalk, rise: number): { value: number; sd: number } | null {
  const point = walk.points.find((p) => p.rise === rise);
  if (!point) return null;
  const { band } = point;
  if (figure === "wheelbase") {
    const jet = subtractJets(band.forward, restOf(walk).band.forward);
    return { value: mmFromMetres(jet[0] as number), sd: mmFromMetres(sdOf(walk, jet)) };
  }
  const jet = figure === "toe" ? band.toe : band.camber;
  return { value: degreesFromRadians(jet[0] as number), sd: degreesFromRadians(sdOf(walk, jet)) };
}

function restOf(walk: CornerWalk): WalkPoint {
  const rest = walk.points.find(({ rise }) => rise === 0);
  if (!rest) throw new Error("a walk holds its ride height");
  return rest;
}

function rowOf(one: Walked, { family, condition }: TravelSheetQuestion): TravelRow {
  const { walk, words, subject } = one;
  const { invented } = subject.kind === "beside" ? subject.family : family;
  const [first, last] = [walk.points[0]?.rise ?? 0, walk.points.at(-1)?.rise ?? 0];
  const travels = [Math.max(first, -SAID_AT), Math.min(last, SAID_AT)].filter((travel) => travel !== 0);
  const changes = travels.flatMap((travel) => changesAt(walk, travel) ?? []);
  const asked = condition.contactRise;
  const said = [0, ...travels].some((travel) => Math.abs(travel - asked) < SAME_HEIGHT);
  return {
    words,
    subject: subject.kind,
    rung: walk.model.assembly.rung,
    invented,
    toe: changes.map(({ toe }) => toe),
    camber: changes.map(({ camber }) => camber),
    asked: said ? null : changesAt(walk, asked),
    binds: bindingWords(walk.model),
  };
}

/** The changes of both angles from ride height to one travel; null where there is no balance. */
function changesAt(walk: CornerWalk, travel: number): Record<"toe" | "camber", TravelChange> | null {
  const rest = restOf(walk);
  const walked = walk.points.find(({ rise }) => Math.abs(rise - travel) < SAME_HEIGHT);
  const at = walked?.band ?? walk.solveAt(travel);
  if (!at) return null;
  const change = (key: "toe" | "camber"): TravelChange => {
    const jet = subtractJets(at[key], rest.band[key]);
    const [value, sd] = [degreesFromRadians(jet[0] as number), degreesFromRadians(sdOf(walk, jet))];
    return { travel, value, band: bandOfAngles([{ value, sd }]), sure: isSignSure(value, sd) };
  };
  return { toe: change("toe"), camber: change("camber") };
}

function poseAt(one: Computed, { condition }: TravelSheetQuestion) {
  if ("effect" in one) return one.effect.faulty;
  const at: WheelBand | null = one.walk.solveAt(condition.contactRise);
  return at ? poseOf(one.walk.model, at.state) : null;
}
