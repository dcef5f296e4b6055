import {
  type Condition,
  type FaultEffect,
  type Figure,
  firmerWords,
  firmnessWords,
  formatBand,
  formatFigure,
  formatNumber,
  formatRange,
  gradeOfPlay,
  gradeOfSign,
  signsFor,
  signWords,
} from "#casework";
import {
  type AssumedFigure,
  assumedMark,
  type Family,
  gradeWords,
  isAssumed,
  leftOutOrigin,
  positionName,
  positionWithId,
} from "#drawing";
import type { FaultSheetFacts } from "./fault-sheet-facts.ts";

/** One line of the table of figures, in words. */
export interface FigureRow {
  readonly label: string;
  readonly value: string;
  /** Where it lies with 95 %; where no band was computed, what the range of the fault alone does. */
  readonly band: string;
  /** In place of a value whose sign is not sure: the reading that would settle it. */
  readonly settle: string | null;
}

/** A heading and its words. */
export interface Paragraph {
  readonly heading: string;
  readonly text: string;
}

const rungWords = { layout: "layout only", scaled: "scaled", measured: "measured", matched: "matched" } as const;

/** How well the geometry behind a figure is known, in one word or two. */
export const rungWord = (figure: Figure): string => rungWords[figure.rung];

/** What is the matter, in the words of the trade: "torn", "loose by 1.0 mm", "firmer, 2 times". */
export function faultInWords({ effect }: FaultSheetFacts): string {
  const { fault } = effect.question;
  switch (fault.kind) {
    case "torn":
      return "torn";
    case "loose":
      return `loose by ${(fault.play * 1000).toFixed(1)} mm${fault.assumed ? " (assumed)" : ""}`;
    case "firmer":
      return firmerWords(fault);
  }
}

/** Title of the sheet: "Rear left, trailing link, front bush: torn". */
export function sheetTitle(facts: FaultSheetFacts): string {
  const name = positionName(facts.family, facts.effect.question.position);
  return `${name}: ${faultInWords(facts)}`;
}

/** Years of a car line in words; "" where none are on file. */
const yearWords = ({ fromYear, toYear }: Family): string =>
  fromYear === undefined ? "" : `${fromYear} to ${toYear ?? "today"}`;

/** The car line by name and years. */
export const carLineName = (family: Family): string =>
  [family.name, yearWords(family)].filter((part) => part !== "").join(", ");

/** What the computation knows of the car line as a whole: wheelbase, tracks, tyres, mass; what nobody entered is called so. */
export function carLineWords(family: Family): string {
  const { wheelbase, front, rear, kerbMass, frontWeightShare } = family;
  const told = (value: string, figure: AssumedFigure): string => `${value}${assumedMark(family, figure)}`;
  const mm = (metres: number): string => `${formatNumber(metres * 1000, 0)} mm`;
  const tyre = (axle: Family["front"]): string => told(axle.wheel.tyreSize, `${axle.name}-tyre-size`);
  const tyres = tyre(front) === tyre(rear) ? tyre(front) : `${tyre(front)} front, ${tyre(rear)} rear`;
  const layouts = [front, rear].flatMap((axle) =>
    isAssumed(family, `${axle.name}-layout`) ? [`${axle.name} layout ${axle.layout} (assumed)`] : [],
  );
  const heights = [front, rear].flatMap(({ name }) => (isAssumed(family, `${name}-height`) ? [name] : []));
  const words = [
    `Wheelbase ${told(mm(wheelbase), "wheelbase")}`,
    ...layouts,
    `track ${told(`${mm(front.track)} front`, "front-track")}, ${told(`${mm(rear.track)} rear`, "rear-track")}`,
    `tyres ${tyres}`,
    told(`${formatNumber(kerbMass, 0)} kg`, "kerb-mass"),
    told(`${formatNumber(100 * frontWeightShare, 0)} % on the front`, "front-weight-share"),
    ...(heights.length === 0 ? [] : [`height as built ${heights.join(" and ")} (assumed)`]),
  ];
  const marked = words.some((word) => word.includes("(assumed)"));
  return `${words.join("; ")}.${marked ? ` Assumed: ${leftOutOrigin}.` : ""}`;
}

/** Where grades come from as long as no maker's figure is on file. */
const SCALE = "workshop scale, from memory";

const capitalised = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** What the part is looked at as: grade with the signs that mean it, play, or factor. */
export function lookedAtWords({ family, effect }: FaultSheetFacts): string {
  const { fault, position: id } = effect.question;
  const kind = positionWithId(family, id)?.kind ?? "bush";
  switch (fault.kind) {
    case "torn": {
      const own = signsFor(kind).filter((sign) => sign !== "loose-bolt" && gradeOfSign(kind, sign) === fault.grade);
      const signs = own.length === 0 ? "" : `: ${own.map((sign) => signWords[sign]).join(", ")} (${SCALE})`;
      return `Torn, ${gradeWords[fault.grade].toLowerCase()}${signs}.`;
    }
    case "loose": {
      const grade = gradeWords[gradeOfPlay(kind, fault.play)].toLowerCase();
      return `Loose, ${formatNumber(fault.play * 1000, 1)} mm of play from end to end${fault.assumed ? ", assumed: nobody has measured it" : ""}; without a maker's figure that asks for ${grade} (${SCALE}).`;
    }
    case "firmer":
      return effect.firmness
        ? `${capitalised(firmerWords(fault))}: ${firmnessWords(effect.firmness)}; the old hardness ${effect.firmness.from} Shore A ${effect.firmness.origin}; no fault.`
        : `${capitalised(firmerWords(fault))} the sound rate; no fault.`;
  }
}

/** The forces at the wheel by kind and direction, and where the wheel is held. */
export function forceWords({ braking, drive, lateral, contactRise, rack }: Condition): string {
  const kn = (newtons: number): string => `${formatNumber(Math.abs(newtons) / 1000, 1)} kN`;
  const forces = [
    ...(braking > 0 ? [`${kn(braking)} of braking, rearward at the contact patch`] : []),
    ...(braking < 0 ? [`${kn(braking)} forward at the contact patch`] : []),
    ...(drive === 0 ? [] : [`${kn(drive)} of drive, ${drive > 0 ? "forward" : "rearward"} at the wheel centre`]),
    ...(lateral === 0
      ? []
      : [`${kn(lateral)} of side force at the contact patch, toward the ${lateral > 0 ? "left" : "right"}`]),
  ];
  const said = forces.length === 0 ? "none" : forces.join("; ");
  const mm = (metres: number): string => `${formatNumber(Math.abs(metres) * 1000, 1)} mm`;
  const height =
    contactRise === 0 ? "at ride height" : `${mm(contactRise)} ${contactRise > 0 ? "above" : "below"} ride height`;
  const steered = rack === 0 ? "" : `; rack ${mm(rack)} to the ${rack > 0 ? "left" : "right"}`;
  return `${said}; contact patch held ${height}${steered}.`;
}

const NEXT_BY_GRADE = {
  1: "Watch it: look again at the next visit and write down what is seen.",
  2: "Plan it: renew it at a visit that opens this axle anyway.",
  3: "Repair first: renew it before anything on this axle is set or judged.",
} as const;

/** What to do next, as far as a sheet without the car before it can say. */
export function nextWords({ effect }: FaultSheetFacts): string {
  const { headline, question } = effect;
  const { fault } = question;
  if (fault.kind === "firmer")
    return "Nothing needs repair here. Worn neighbours come before firmer rubber, and both sides are changed alike (common practice, no source). What the maker and the law allow comes first.";
  const first = headline.signSure ? [] : ["Until the reading is taken, look at the part itself."];
  const graded =
    fault.kind === "torn"
      ? NEXT_BY_GRADE[fault.grade]
      : "Hold the play against the maker's limit; none is on file here.";
  return [
    ...first,
    graded,
    "See it on the car before ordering. Part, torques and the height for final tightening are the maker's; measure the alignment afterwards.",
  ].join(" ");
}

/** The reading that would settle a figure's sign; words for where none is known. */
export const settleWords = (figure: Figure): string =>
  figure.settle === null || figure.settle === ""
    ? "its sign is not sure, and no reading would settle it"
    : figure.settle;

/** A label that names the state by what it is. */
export const stateLabel = ({ label }: Figure, { question }: FaultEffect): string =>
  label.replaceAll("faulty", question.fault.kind);

/** A figure as a row; one whose sign is not sure gives the reading that would settle it in place of its value. */
function figureRow(figure: Figure, effect: FaultEffect): FigureRow {
  const label = stateLabel(figure, effect);
  if (!figure.signSure) return { label, value: "not printed", band: "", settle: settleWords(figure) };
  return {
    label,
    value: formatFigure(figure),
    band: formatBand(figure) ?? formatRange(figure) ?? "",
    settle: null,
  };
}

/** All rows; a reading that would settle several figures is written once, that of the headline beside the curves. */
export function figureRows(effect: FaultEffect): readonly FigureRow[] {
  const rows = effect.figures.map((figure) => figureRow(figure, effect));
  const headline = effect.headline.signSure ? null : settleWords(effect.headline);
  return rows.map((row, i) => {
    const said =
      row.settle !== null && (row.settle === headline || rows.slice(0, i).some(({ settle }) => settle === row.settle));
    return said ? { ...row, band: "settled as above", settle: null } : row;
  });
}

/** The pieces of words that explain the figures, in reading order. */
export function paragraphsOf(facts: FaultSheetFacts): readonly Paragraph[] {
  const { effect } = facts;
  const sources = [...new Set(effect.figures.map(({ source }) => source))].join("; ");
  return [
    { heading: "Judged against", text: effect.judgedAgainst },
    { heading: "How sure", text: effect.howSure },
    ...(effect.narrows === null ? [] : [{ heading: "To know it better", text: effect.narrows }]),
    { heading: "What else moves", text: effect.whatElse },
    { heading: "Computed so", text: `${effect.computedSo} Method and proof: ${sources}.` },
    { heading: "What next", text: nextWords(facts) },
  ];
}
