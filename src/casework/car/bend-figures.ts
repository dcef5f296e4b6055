import { type CarBalanceState, wheelPlaces } from "#engines/linkage";
import { degreesFromRadians, mmFromMetres } from "#quantity";
import { assumedMark, STANDARD_GRAVITY } from "#vehicle";
import { bandOfAngles } from "../fault/change-band.ts";
import { formatNumber } from "../fault/format-figure.ts";
import type { Figure } from "../fault-effect.ts";
import { type BendFacts, PLACE_WORDS, sinks } from "./bend-facts.ts";
import { cornerKey } from "./corner-rows.ts";
import { USUAL_TYRE_RATE } from "./loaded-car.ts";

const SOURCE = "docs/method/linkage.md, section 16";

/** Every figure of a car in a bend; those of the body and the loads with the scatter of the cars that may be. */
export function bendFigures(facts: BendFacts): readonly Figure[] {
  return [
    ...bodyFigures(facts),
    ...loadFigures(facts),
    ...facts.antis,
    ...wheelFigures(facts),
    ...giveFigures(facts),
    ...changedFigures(facts),
  ];
}

function inputsOf({ question: { family }, motion }: BendFacts): Figure["inputs"] {
  const g = (acceleration: number): string => formatNumber(Math.abs(acceleration) / STANDARD_GRAVITY, 2);
  const along = motion.along === 0 ? "none" : `${g(motion.along)} g, ${motion.along < 0 ? "braked" : "driven"}`;
  const share = motion.along < 0 ? family.front.brakeShare : family.front.driveShare;
  return [
    { label: "Sideways", value: `${g(motion.by)} g, a bend to the ${motion.by >= 0 ? "left" : "right"}` },
    { label: "Along the car", value: along },
    ...(motion.along === 0
      ? []
      : [
          {
            label: motion.along < 0 ? "Braked in front" : "Driven in front",
            value: `${formatNumber(100 * share, 0)} %${motion.along < 0 ? assumedMark(family, "brake-shares") : ""}`,
          },
        ]),
    {
      label: "Mass, ready to drive",
      value: `${formatNumber(family.kerbMass, 0)} kg${assumedMark(family, "kerb-mass")}`,
    },
    {
      label: "Centre of mass",
      value: `${formatNumber(mmFromMetres(family.cgHeight), 0)} mm over the road${assumedMark(family, "centre-of-mass-height")}`,
    },
    { label: "Tyre", value: `${formatNumber(USUAL_TYRE_RATE / 1000, 0)} N/mm, common practice, no source` },
  ];
}

const RELATION =
  "balance of body and four wheels by virtual work on the linkages with springs, bars and tyres; with arms that lie level it is the handbook's distribution by roll stiffness; band by sampling";

interface Said {
  readonly key: string;
  readonly label: string;
  readonly unit: "deg" | "mm" | "N";
  readonly axle: "front" | "rear";
}

function sampled(facts: BendFacts, said: Said, of: (s: CarBalanceState) => number): Figure {
  const { value, spread, sure } = facts.known(of);
  return {
    key: said.key,
    label: said.label,
    value,
    unit: said.unit,
    u: spread.sd,
    range: null,
    band: [spread.low, spread.high],
    rung: facts.question.family[said.axle].rung,
    inputs: inputsOf(facts),
    relation: RELATION,
    source: SOURCE,
    signSure: sure,
    settle: sure ? null : "Weigh the car on four scales and enter what stands on each axle.",
  };
}

function bodyFigures(facts: BendFacts): readonly Figure[] {
  const { by, along } = facts.motion;
  const figure = (key: string, label: string, unit: Said["unit"], of: (s: CarBalanceState) => number): Figure =>
    sampled(facts, { key, label, unit, axle: "front" }, of);
  return [
    ...(by === 0
      ? []
      : [figure("bend-lean", "Lean of the body", "deg", (s) => Math.sign(by) * degreesFromRadians(s.roll))]),
    ...(along === 0
      ? []
      : [
          figure(
            "bend-nod",
            along < 0 ? "Nod of the body, nose down" : "Nod of the body, nose up",
            "deg",
            (s) => -Math.sign(along) * degreesFromRadians(s.pitch),
          ),
          ...(["front", "rear"] as const).map((axle) => {
            const down = along < 0 === (axle === "front");
            return sampled(
              facts,
              {
                key: `bend-${axle}-sinks`,
                label: `${axle === "front" ? "Front" : "Rear"} of the body goes ${down ? "down" : "up"} on its springs`,
                unit: "mm",
                axle,
              },
              (s) => (down ? 1 : -1) * mmFromMetres(sinks(axle, s)),
            );
          }),
        ]),
  ];
}

function loadFigures(facts: BendFacts): readonly Figure[] {
  const { by, along } = facts.motion;
  return [
    ...(by === 0
      ? []
      : (["front", "rear"] as const).map((axle) =>
          sampled(
            facts,
            { key: `bend-${axle}-moved`, label: `Load that goes to the outer ${axle} wheel`, unit: "N", axle },
            (s) => Math.sign(by) * s.moved[axle],
          ),
        )),
    ...(along === 0
      ? []
      : [
          sampled(
            facts,
            {
              key: "bend-along-moved",
              label: `Load that goes to the ${along < 0 ? "front" : "rear"} axle`,
              unit: "N",
              axle: "front",
            },
            (s) => -Math.sign(along) * s.movedForward,
          ),
        ]),
  ];
}

/** What every wheel has: for the table of four. */
function wheelFigures(facts: BendFacts): readonly Figure[] {
  const standing = facts.standing;
  return wheelPlaces.flatMap((place) => {
    const axle = place.startsWith("front") ? "front" : "rear";
    const figure = (end: string, label: string, unit: Said["unit"], of: (s: CarBalanceState) => number): Figure =>
      sampled(facts, { key: cornerKey(place, end), label, unit, axle }, of);
    const words = PLACE_WORDS[place];
    const still = facts.motion.by === 0 && facts.motion.along === 0;
    return [
      figure("load", `Load of the ${words} wheel`, "N", (s) => s[place].load),
      ...(still
        ? []
        : [
            figure("travel", `Travel of the ${words} wheel against the body, bump`, "mm", (s) =>
              mmFromMetres(s[place].travel),
            ),
            figure("camber", `Camber of the ${words} wheel against the ground, from standing`, "deg", (s) =>
              degreesFromRadians(s[place].camber - standing[place].camber),
            ),
            figure("toe", `Toe of the ${words} wheel by the linkage, from standing`, "deg", (s) =>
              degreesFromRadians(s[place].toe - standing[place].toe),
            ),
          ]),
    ];
  });
}

function giveFigures(facts: BendFacts): readonly Figure[] {
  return wheelPlaces.flatMap((place): readonly Figure[] => {
    const give = facts.gives[place];
    if (give === null) return [];
    const [value, u] = [degreesFromRadians(give.toe), degreesFromRadians(give.sd)];
    return [
      {
        key: cornerKey(place, "give"),
        label: `Toe the ${PLACE_WORDS[place]} wheel gives by its joints`,
        value,
        unit: "deg",
        u,
        range: null,
        band: bandOfAngles([{ value, sd: u }]) as [number, number],
        rung: facts.question.family[place.startsWith("front") ? "front" : "rear"].rung,
        inputs: [
          ...inputsOf(facts),
          {
            label: "Sideways force of this wheel",
            value: `${formatNumber(Math.abs(facts.state[place].lateral), 0)} N`,
          },
          ...alongForce(facts.state[place]),
        ],
        relation:
          "balance of the corner with rubber under the forces this wheel has less that without, contact height held; band by exact derivatives",
        source: SOURCE,
        signSure: give.settle === null,
        settle: give.settle,
      },
    ];
  });
}

const alongForce = ({ braking, drive }: CarBalanceState["frontLeft"]): Figure["inputs"] =>
  braking > 0
    ? [{ label: "Braking force of this wheel", value: `${formatNumber(braking, 0)} N` }]
    : drive > 0
      ? [{ label: "Driving force of this wheel", value: `${formatNumber(drive, 0)} N` }]
      : [];

/** What the torn, loose or firmer joint changes, beside what the sound ones give. */
function changedFigures({ changed }: BendFacts): readonly Figure[] {
  if (changed === null || "findings" in changed.told) return [];
  return [
    {
      ...changed.told.figure,
      key: "bend-changed-toe",
      label: `Toe the ${PLACE_WORDS[changed.place]} wheel turns further, ${changed.as}`,
    },
  ];
}
