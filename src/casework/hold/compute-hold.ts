import { chooseHolds, type LoadState, movingParts, pointOnPart } from "#engines/linkage";
import type { Finding, Vector } from "#numeric";
import { axleAndSide, type Corner, type Family, positionsOf } from "#vehicle";
import { refuseBodies } from "../fault/bodies-refused.ts";
import { type CornerModel, modelCorner, onAskedSide } from "../fault/corner-model.ts";
import { listParts } from "../fault/effect-parts.ts";
import type { BestWay, Held, HeldState, Hold } from "../hold.ts";
import { heldKey, jointAt, loadedCornerOf, SUPPORT_SHARE, seenIn, solveHeld, waysToHold } from "./held-corner.ts";
import { bestWords, describeHold, heldTitle, holdNotes, howToHold } from "./hold-words.ts";
import { poseOfState } from "./pose-of-state.ts";
import { judgeJoint, sampleHolds } from "./sample-holds.ts";

interface Solved {
  readonly held: Held;
  readonly state: LoadState;
}

/** The positions of a corner that are joints of its linkage. */
export const jointsOf = (family: Family, corner: Corner) =>
  positionsOf(family).filter((p) => p.joint !== null && p.side !== null && `${p.axle}-${p.side}` === corner);

/**
 * Forces in every joint of a corner standing, hanging and supported under each of its parts; in which of them the play of
 * each joint can be seen, and how to hold the car for it. Findings where the corner cannot be computed standing.
 */
export function computeHold(
  family: Family,
  corner: Corner,
): { readonly hold: Hold } | { readonly findings: readonly Finding[] } {
  const refused = refuseBodies(
    family,
    [axleAndSide(corner).axle],
    "the page A layout from a file holds it in every way",
  );
  if (refused.length > 0) return { findings: refused };
  const model = modelCorner(family, corner);
  const { assembly } = model;
  const loaded = loadedCornerOf(assembly);
  const ways = waysToHold(loaded);
  const solved = ways.flatMap((held): readonly Solved[] => {
    const state = solveHeld(loaded, held);
    return state ? [{ held, state }] : [];
  });
  if (!solved.some(({ held }) => held.kind === "ride"))
    return {
      findings: [
        {
          code: "cannot-carry",
          path: "",
          got: "a corner that finds no balance on its spring",
          needed: "a corner that carries its wheel load",
          hint: "Look at the spring's points and the damper in the family sheet.",
        },
      ],
    };
  const positions = jointsOf(family, corner);
  const drawn = sampleHolds(assembly, positions);
  const states = solved.map(
    ({ held, state }): HeldState => ({
      key: heldKey(held),
      held,
      title: heldTitle(assembly, held),
      how: howToHold(assembly, held),
      travel: state.travel,
      pose: poseOfState(model, state),
      spring: state.spring,
      stop: state.stop ?? 0,
      under: state.under,
      wheelLoad: state.wheelLoad,
      supportAt: supportPlace(model, held, state),
      joints: positions.flatMap((position) => judgeJoint(model, held, state, position, drawn) ?? []),
    }),
  );
  const best = chooseBest(model, solved, states, positions);
  return {
    hold: {
      corner,
      rung: assembly.rung,
      invented: family.invented,
      parts: listParts(model),
      // Standing first, as a car comes in.
      states: [
        ...states.filter(({ held }) => held.kind === "ride"),
        ...states.filter(({ held }) => held.kind !== "ride"),
      ],
      leftOut: ways
        .filter((held) => !solved.some((one) => one.held === held))
        .map((held) => `${heldTitle(assembly, held)}: not computed, nothing carries the wheel so`),
      best,
      sentence: describeHold({ assembly, positions, states, best }),
      ...holdNotes(assembly),
    },
  };
}

/** The part the spring stands on, where that is not the knuckle: the one that is supported. */
function springPart({ geometry }: CornerModel): string | null {
  const seat = geometry.spring?.seat;
  if (!seat || seat.on === "knuckle") return null;
  const link = seat.on === "link" ? seat.link : seat.links[0];
  return movingParts(geometry).find(({ legs }) => legs.some(({ name }) => name === link))?.name ?? null;
}

/**
 * Holds are chosen in the order of least work: hanging, the part supported that the spring stands on, standing. A support
 * under any other part may free a joint on paper, but is no place to lift at.
 */
function chooseBest(
  model: CornerModel,
  all: readonly Solved[],
  states: readonly HeldState[],
  positions: ReturnType<typeof jointsOf>,
): readonly BestWay[] {
  const { assembly } = model;
  const usual = springPart(model);
  const solved = all.filter(({ held }) => held.kind !== "under" || held.part === usual);
  return positions.flatMap((position): readonly BestWay[] => {
    const joints = solved.map(({ state }) => jointAt(assembly, seenIn(state), position));
    if (joints.some((joint) => joint === null)) return [];
    const [way] = chooseHolds(joints.map((joint) => (joint ? [joint] : [])));
    const chosen = way && way.state !== null ? solved[way.state] : undefined;
    const state = states.find(({ held }) => held === chosen?.held) ?? null;
    const joint = state?.joints.find((one) => one.position === position.id) ?? null;
    return [
      {
        position: position.id,
        state: state?.key ?? null,
        by: joint?.by ?? "nothing",
        words: bestWords(assembly, state, joint),
      },
    ];
  });
}

function supportPlace(model: CornerModel, held: Held, state: LoadState): readonly [number, number, number] | null {
  if (held.kind !== "under") return null;
  const part = movingParts(model.geometry).find(({ name }) => name === held.part);
  const at: Vector | null = part ? pointOnPart(model.geometry, part, state.pose, SUPPORT_SHARE) : null;
  if (!at) return null;
  const [x, y, z] = onAskedSide(model, at);
  return [x, y, z];
}
