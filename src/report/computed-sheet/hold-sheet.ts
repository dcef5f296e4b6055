import { formatBand, formatFigure, formatForce, type HandTest, type Hold } from "#casework";
import { drawHeldCorner, type Family, positionWithId, seenNames } from "#drawing";
import { type ComputedSheet, carLineSubject } from "./computed-sheet.ts";

/** What a sheet of how a corner is held is made from. */
export interface HoldSheetFacts {
  readonly family: Family;
  readonly hold: Hold;
  /** Key of the state that is drawn. */
  readonly state: string;
  /** The joint looked at with what a hand does there; null without one. */
  readonly test: HandTest | null;
  readonly date: string;
  readonly by?: string;
}

/** The printed sheet of load states and of one hand test. */
export function holdSheet({ family, hold, state: key, test, date, by }: HoldSheetFacts): ComputedSheet {
  const label = (id: string): string => positionWithId(family, id)?.label ?? id;
  const states = hold.states.filter(
    ({ held }) => held.kind !== "under" || isUsual(hold, held.part) || heldIs(key, held),
  );
  const drawn = hold.states.find((one) => one.key === key) ?? hold.states[0];
  const most = Math.max(...hold.states.flatMap(({ joints }) => joints.map(({ load }) => load)), 1);
  const corner = hold.corner.replace("-", " ");
  const share = 0.46 / Math.max(states.length, 1);
  return {
    subject: carLineSubject(family),
    title: `${corner.charAt(0).toUpperCase()}${corner.slice(1)}: how to hold it, and where play shows`,
    sentences: [hold.sentence, ...(test === null ? [] : [test.sentence])],
    asked: drawn === undefined ? [] : [{ heading: "Drawn", text: `${drawn.title.toLowerCase()}. ${drawn.how}` }],
    drawings:
      drawn === undefined
        ? []
        : [
            {
              share: 1,
              draw: (room) =>
                drawHeldCorner(family, hold.corner, drawn, {
                  ...room,
                  selected: test?.question.position ?? null,
                  format: formatForce,
                  most,
                  arrangement: "row",
                }),
            },
          ],
    tables: [
      {
        caption: "",
        columns: [
          { title: "joint", share: 0.22, anchor: "start" },
          ...states.map(({ title }) => ({ title: title.toLowerCase(), share, anchor: "start" as const })),
          { title: "its play is seen best so", share: 0.32, anchor: "start" },
        ],
        rows: hold.best.map((way) => [
          label(way.position),
          ...states.map(({ joints }) => {
            const joint = joints.find(({ position }) => position === way.position);
            return joint === undefined ? "" : `${formatForce(joint.load)}; ${seenNames[joint.by]}`;
          }),
          way.words,
        ]),
      },
    ],
    words: [
      ...(test === null
        ? []
        : [
            {
              heading: "By hand",
              text: `${test.figures
                .filter(({ signSure }) => signSure)
                .map((f) => `${f.label}: ${formatFigure(f)}${f.band === null ? "" : ` (${formatBand(f)})`}`)
                .join("; ")}. ${test.howSure}`,
            },
          ]),
      { heading: "How sure", text: hold.howSure },
      {
        heading: "Computed so",
        text: `${hold.computedSo} Method: docs/method/load-states.md; hand-means, from memory.`,
      },
    ],
    cautions: hold.cautions,
    blockName: "How to hold it",
    cells: [
      { label: "Rung", value: hold.rung, share: 0.4 },
      { label: "Units", value: "mm, N, N·m", share: 0.6 },
    ],
    date,
    ...(by === undefined ? {} : { by }),
  };
}

/** Supports that are the best way of some joint. */
const isUsual = (hold: Hold, part: string): boolean => hold.best.some(({ state }) => state === `under/${part}`);
const heldIs = (key: string, held: { readonly part: string }): boolean => key === `under/${held.part}`;
