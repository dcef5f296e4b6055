import { type BranchEnd, LayoutSweep } from "#engines/linkage";
import type { Finding } from "#numeric";
import { degreesFromRadians, mmFromMetres } from "#quantity";
import type { BodiesAsked, BodiesFile, BodiesSheet } from "../bodies.ts";
import { firmerInputs, howFirmWords, mayBeNoFirmer, settleFirmness } from "../fault/firmer-rubber.ts";
import { formatFigure, formatNumber } from "../fault/format-figure.ts";
import { conditionWords, inOrOut } from "../fault/phrases.ts";
import type { Figure } from "../fault-effect.ts";
import { checkBodiesFault, layoutFirmness, spanFault } from "./bodies-fault.ts";
import { plotBodies } from "./bodies-plots.ts";
import { faultInSentence, lessSoundWords, partWords } from "./bodies-words.ts";
import { changeFigure } from "./layout-change.ts";
import { type LayoutBand, LayoutStates } from "./layout-states.ts";
import { placeBodies } from "./place-bodies.ts";

const FURTHEST = 0.08;
const STEP = 0.005;
/** Nearer than this to a place where it binds nothing is computed, metres. */
const SHORT_OF_END = 0.01;
/** Changes over travel are said at so much bump and droop, metres. */
const SAID_AT = 0.05;
const REACH = 0.2;

/**
 * A suspension of any number of bodies over its travel: toe and camber with their bands, sound and with one fault, and where
 * every part stands at the asked travel. Findings where its joints cannot carry the wheel, where the fault is none of this
 * file, or where no balance is found.
 */
export function computeBodies(
  asked: BodiesAsked,
): { readonly sheet: BodiesSheet } | { readonly findings: readonly Finding[] } {
  const { file, fault, condition } = asked;
  const wrong = checkBodiesFault(file, fault);
  if (wrong.length > 0) return { findings: wrong };
  const sound = new LayoutStates(file, []);
  if (!sound.balance.carries) return { findings: [cannotCarry] };
  const { middle, ends: spanned } = spanFault(file, fault);
  const faulty = fault === null ? [] : [middle, ...spanned].map((faults) => new LayoutStates(file, faults));
  const here = sound.at(condition, condition.contactRise);
  if (here === null) return { findings: [noBalance(condition.contactRise)] };
  const there = faulty.flatMap((states) => states.at(condition, condition.contactRise) ?? []);
  const ends = new LayoutSweep(file.layout).findEnds(REACH);
  const low = Math.max(-FURTHEST, (ends.low?.at ?? -REACH) + SHORT_OF_END);
  const high = Math.min(FURTHEST, (ends.high?.at ?? REACH) - SHORT_OF_END);
  const count = Math.max(2, Math.round((high - low) / STEP));
  const rises = Array.from({ length: count + 1 }, (_, i) => low + ((high - low) * i) / count);
  const walkOf = (states: LayoutStates) => rises.map((rise) => states.at(condition, rise));
  const walks = { sound: walkOf(sound), faulty: faulty.map(walkOf) };
  const whole = there.length === faulty.length ? there : [];
  const figures = figuresOf({ asked, sound, here, there: whole });
  const [first] = there;
  return {
    sheet: {
      fault,
      plots: plotBodies(asked, sound, rises, walks),
      placed: placeBodies(sound.linkage, here.state),
      faultyPlaced: first && fault !== null ? placeBodies(sound.linkage, first.state) : null,
      rung: "measured",
      invented: /\binvented\b/i.test(file.note),
      parts: [],
      figures,
      sentence: sentenceOf(asked, figures, whole.length > 0),
      others: first ? othersWords(first) : null,
      binds: bindWords(file, ends.low, ends.high),
      howSure: howSure(asked),
      notComputed: notComputed(file),
      computedSo: `${isRigid(file) ? RIGID : ELASTIC} No code knows this layout: it is read from the file.`,
    },
  };
}

function notComputed({ isPlain, held, elasticity: { rubber } }: BodiesFile): string {
  const alone =
    "A layout alone: moved as a rigid linkage. What forces do, and what is torn, loose or firmer, need spring, wheel load and rubber beside the layout, as the example has them.";
  const turns = rubber.some(({ rate }) => rate.conical !== undefined || rate.torsional !== undefined);
  return [
    ...(isPlain ? [alone] : []),
    turns
      ? "Bending of links and bodies, the other wheel."
      : "What rubber resists against turning (the file gives no rates for it), bending of links and bodies, the other wheel.",
    ...(held === null && !isPlain
      ? ["Forces while the car hangs, and how to hold it: the file gives no unsprung_kg and droop_stop_mm."]
      : []),
  ].join(" ");
}

const RIGID = "Every joint and link keeps its measures exactly, the contact height held: nothing in the file gives.";
const ELASTIC =
  "All bodies in balance on rubber at the asked forces, the contact height held; bodies are rigid. Play is a dead band; of several balances the one on the side of the healthy preload is shown.";

/** Whether nothing in the file gives: what is rigid stands alike under every force. */
const isRigid = ({ elasticity: { rubber, members } }: BodiesFile): boolean =>
  rubber.length === 0 && members.length === 0;

function howSure({ file, fault }: BodiesAsked): string {
  if (file.sd.every((sd) => sd === 0) && file.elasticity.rubber.length === 0)
    return "The file gives no deviation of its points (sd_mm): nothing here has a band.";
  const points = file.sd.map((sd) => formatNumber(2 * mmFromMetres(sd), 1)).join(", ");
  const { low, high, origin } = file.tornShare;
  const torn =
    fault?.kind === "torn"
      ? ` Torn means ${formatNumber(100 * low, 0)} to ${formatNumber(100 * high, 0)} % of the sound rate (${origin}).`
      : "";
  const told =
    fault?.kind === "loose"
      ? fault.assumed
        ? " The play is assumed: nobody has measured it."
        : " The play is taken as told."
      : "";
  const firmness = layoutFirmness(fault);
  const firm =
    fault !== null && "hardness" in fault
      ? ` ${howFirmWords({ kind: "firmer", hardness: fault.hardness }, firmness)}`
      : "";
  return `Bands hold 95 %: every point ±${points} mm along, across and in height, rates as the file says.${torn}${told}${firm}`;
}

interface FiguresAsked {
  readonly asked: BodiesAsked;
  readonly sound: LayoutStates;
  readonly here: LayoutBand;
  readonly there: readonly LayoutBand[];
}

/** What the fault changes at the asked travel, then what travel changes in the sound state. */
function figuresOf({ asked: { fault, condition }, sound, here, there }: FiguresAsked): readonly Figure[] {
  const mm = (metres: number): string => `${formatNumber(mmFromMetres(Math.abs(metres)), 0)} mm`;
  const inputs = [
    { label: "Forces", value: conditionWords(condition) },
    { label: "Travel", value: `${condition.contactRise < 0 ? "−" : ""}${mm(condition.contactRise)}` },
  ];
  const firmness = layoutFirmness(fault);
  const ofFault =
    fault !== null && "hardness" in fault ? firmerInputs({ kind: "firmer", hardness: fault.hardness }, firmness) : [];
  const settle = settleFirmness(firmness);
  const [first, ...rest] = there;
  const changes =
    fault === null || first === undefined
      ? []
      : (["toe", "camber"] as const)
          .map((key) =>
            changeFigure({
              states: sound,
              key,
              label: `${key === "toe" ? "Toe" : "Camber"}, ${lessSoundWords(fault)}`,
              bands: [first, ...rest],
              less: here,
              inputs: [...inputs, ...ofFault],
            }),
          )
          .map((figure) => (settle === null || figure.signSure ? figure : { ...figure, settle }));
  const rest0 = sound.at(condition, 0);
  const over = [SAID_AT, -SAID_AT].flatMap((travel) => {
    const band = sound.at(condition, travel);
    if (band === null || rest0 === null) return [];
    return (["toe", "camber"] as const).map((key) =>
      changeFigure({
        states: sound,
        key,
        label: `${key === "toe" ? "Toe" : "Camber"} from ride height, ${mm(travel)} of ${travel > 0 ? "bump" : "droop"}`,
        bands: [band],
        less: rest0,
        inputs,
      }),
    );
  });
  return [...changes, ...over];
}

function sentenceOf({ file, fault, condition }: BodiesAsked, figures: readonly Figure[], isFound: boolean): string {
  const forces = isRigid(file) && fault === null ? "" : `${conditionWords(condition)} `;
  const begin = (words: string): string =>
    `${forces}${forces === "" ? `${words.charAt(0).toUpperCase()}${words.slice(1)}` : words}`;
  if (fault !== null && !isFound)
    return `${forces}no balance is found with ${faultInSentence(file.layout, fault)}: it gives way at this travel.`;
  const [first] = figures;
  if (first === undefined) return "No figure could be computed at this travel.";
  const size = formatFigure({ ...first, value: Math.abs(first.value) });
  if (fault === null) {
    return first.signSure
      ? begin(
          `the wheel turns ${inOrOut(first.value)} ${size} over the first ${formatNumber(mmFromMetres(SAID_AT), 0)} mm of bump.`,
        )
      : begin("it is not sure which way the wheel turns over its travel.");
  }
  const firmness = layoutFirmness(fault);
  if (!first.signSure && firmness !== null && mayBeNoFirmer(firmness))
    return `${forces}nobody can say yet what ${faultInSentence(file.layout, fault)} does: by its hardness it may be no firmer than the sound one.`;
  return first.signSure
    ? `${forces}the wheel turns ${inOrOut(first.value)} ${size} further with ${faultInSentence(file.layout, fault)}.`
    : `${forces}it is not sure which way the wheel turns with ${faultInSentence(file.layout, fault)}.`;
}

/** Other balances of a loose part at the asked travel; null where there is only one. */
function othersWords({ state, others }: LayoutBand): string | null {
  if (others.length === 0) return null;
  const toes = others.map(({ attitude }) => degreesFromRadians(attitude.toe - state.attitude.toe));
  const said = toes.map((toe) => `${formatNumber(Math.abs(toe), 2)}° further ${inOrOut(toe)}`).join(", ");
  return `It can also stand ${said}: which of them holds, the way there decides.`;
}

function bindWords({ layout }: BodiesFile, low: BranchEnd | null, high: BranchEnd | null): string {
  const said = (end: BranchEnd, way: string): string =>
    `at ${formatNumber(mmFromMetres(Math.abs(end.at)), 0)} mm of ${way} it binds in ${end.joints
      .map(({ joint }) => partWords(layout, joint))
      .join(", ")}`;
  const words = [...(low ? [said(low, "droop")] : []), ...(high ? [said(high, "bump")] : [])];
  return words.length === 0
    ? `It binds nowhere within ${formatNumber(mmFromMetres(REACH), 0)} mm.`
    : `${words.join("; ").charAt(0).toUpperCase()}${words.join("; ").slice(1)}.`;
}

const cannotCarry: Finding = {
  code: "cannot-carry",
  path: "layout.spring",
  got: "a spring that does not carry the wheel",
  needed: "a spring whose length changes when the wheel rises",
  hint: "Look at the spring's points.",
};

const noBalance = (rise: number): Finding => ({
  code: "no-equilibrium",
  path: "condition.contactRise",
  got: `${formatNumber(mmFromMetres(rise), 0)} mm`,
  needed: "a travel and forces at which the bodies find a balance",
  hint: "Move it less, or pull less.",
});
