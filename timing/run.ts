import { cpus } from "node:os";
import { rateOfCompiled } from "./compiled-rival.ts";
import { rateOfLayout, timeLayoutStates } from "./layouts.ts";
import { formatFigure, median, ROUNDS, type TimingRow } from "./measure.ts";
import { measureMemory } from "./memory.ts";
import { rateOfEngine, rateOfLeastSquares } from "./positions.ts";
import { SEED } from "./seeded-corners.ts";
import { timeOneMove, timeStates } from "./states.ts";
import { timeBendMoves } from "./whole-car.ts";

/** Solves of the memory run; `--quick` takes a tenth. */
const SOLVES = process.argv.includes("--quick") ? 1_000_000 : 10_000_000;
/** Growth that is none: what a collector leaves lying about. */
const NO_GROWTH = 1_000_000;

const times = (x: number): string => `${formatFigure(x)} times`;

/** Engine and C take turns, as another program on the machine slows whichever runs beside it. */
const TURNS = 5;

function takeTurns() {
  const turns = Array.from({ length: TURNS }, () => ({ engine: rateOfEngine(20), compiled: rateOfCompiled(20) }));
  const middle = (of: (turn: (typeof turns)[number]) => number): number => median(turns.map(of));
  const [{ engine, compiled }] = turns as [(typeof turns)[number]];
  return {
    engine: {
      warm: middle((t) => t.engine.warm),
      cold: middle((t) => t.engine.cold),
      closure: engine.closure,
    },
    compiled: compiled && {
      ...compiled,
      warm: middle((t) => t.compiled?.warm ?? 0),
      cold: middle((t) => t.compiled?.cold ?? 0),
      against: middle((t) => (t.compiled?.warm ?? 0) / t.engine.warm),
    },
  };
}

function positionRows(): TimingRow[] {
  const { engine, compiled } = takeTurns();
  const general = rateOfLeastSquares(1);
  const perSecond = (x: number): string => `${formatFigure(x)} per second`;
  const rows: TimingRow[] = [
    { what: "positions, warm (2 mm from the one before)", figure: perSecond(engine.warm), goal: "", met: null },
    { what: "positions, cold (Newton from design)", figure: perSecond(engine.cold), goal: "", met: null },
    { what: "general least squares, warm", figure: perSecond(general.warm), goal: "", met: null },
    { what: "general least squares, cold", figure: perSecond(general.cold), goal: "", met: null },
    {
      what: "engine against least squares, warm",
      figure: times(engine.warm / general.warm),
      goal: "at least 20 times",
      met: engine.warm / general.warm >= 20,
    },
    {
      what: "joints open at worst: engine, least squares",
      figure: `${formatFigure(engine.closure * 1000)} and ${formatFigure(general.closure * 1000)} mm`,
      goal: "engine below 1e-9 mm",
      met: engine.closure < 1e-12,
    },
  ];
  if (!compiled) return [...rows, { what: "the same in C", figure: "left out: no compiler here", goal: "", met: null }];
  return [
    ...rows,
    { what: `the same in C (${compiled.compiler} -O2), warm`, figure: perSecond(compiled.warm), goal: "", met: null },
    { what: `the same in C (${compiled.compiler} -O2), cold`, figure: perSecond(compiled.cold), goal: "", met: null },
    {
      what: "C against engine, warm",
      figure: times(compiled.against),
      goal: "at most 1.5 times",
      met: compiled.against <= 1.5,
    },
    {
      what: "sum of answers, C less engine",
      figure: formatFigure(compiled.apart),
      goal: "below 1e-9",
      met: compiled.apart < 1e-9,
    },
  ];
}

function stateRows(): TimingRow[] {
  const states = timeStates(ROUNDS);
  const move = timeOneMove(ROUNDS);
  return [
    {
      what: `4 states x 60 positions (${states.positions}), all figures, compliance and bands`,
      figure: `${formatFigure(states.milliseconds)} ms`,
      goal: "50 ms",
      met: states.milliseconds <= 50,
    },
    {
      what: "one height in 4 states, with compliance",
      figure: `${formatFigure(move)} ms`,
      goal: "8 ms",
      met: move <= 8,
    },
  ];
}

/** Rounds of what takes long. */
const FEW_ROUNDS = 5;

function layoutRows(): TimingRow[] {
  const states = timeLayoutStates(FEW_ROUNDS);
  return [
    {
      what: "a layout of two bodies: positions, warm",
      figure: `${formatFigure(rateOfLayout(ROUNDS, 20))} per second`,
      goal: "",
      met: null,
    },
    {
      what: `a layout of two bodies: 4 states x 60 positions (${states.positions}), compliance and bands`,
      figure: `${formatFigure(states.milliseconds)} ms`,
      goal: "",
      met: null,
    },
  ];
}

/** Under this a page shows no sign of waiting. */
const UNSEEN = 100;

function bendRows(): TimingRow[] {
  const { sideways, along } = timeBendMoves(ROUNDS);
  const row = (what: string, milliseconds: number): TimingRow => ({
    what,
    figure: `${formatFigure(milliseconds)} ms`,
    goal: `${UNSEEN} ms`,
    met: milliseconds <= UNSEEN,
  });
  return [
    row("whole car in a bend with bands: one move sideways", sideways),
    row("whole car in a bend with bands: one move along the car, curves anew", along),
  ];
}

function memoryRow(): TimingRow {
  const { solves, before, after } = measureMemory(SOLVES);
  return {
    what: `memory over ${solves / 1e6} million solves`,
    figure: `${formatFigure((after - before) / 1000)} kB more`,
    goal: "no growth",
    met: after - before < NO_GROWTH,
  };
}

const rows = [...positionRows(), ...stateRows(), ...layoutRows(), ...bendRows(), memoryRow()];
const width = Math.max(...rows.map((r) => r.what.length));
process.stdout.write(
  `${cpus()[0]?.model ?? "unknown processor"}, node ${process.version}, seed ${SEED}, median of ${ROUNDS}, one thread, processor time\n\n`,
);
for (const { what, figure, goal, met } of rows) {
  const word = met === null ? "" : met ? `  goal ${goal}: met` : `  goal ${goal}: MISSED`;
  process.stdout.write(`${what.padEnd(width)}  ${figure}${word}\n`);
}
