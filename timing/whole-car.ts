import { computeCar } from "#casework";
import { parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import type { Family } from "#vehicle";
import { medianMilliseconds } from "./measure.ts";

const G = 9.80665;
/** Moves until the compiled code is what it stays. */
const SETTLING = 8;

const readCar = (): Family => {
  const parsed = parseFamily(structuredClone(demoFamilySheets["ouzel-saloon"]));
  if ("findings" in parsed) throw new Error("the invented saloon cannot be read");
  return parsed.family;
};

/** One move of a slider of the whole car, figures, curves and bands of fifty drawn cars: sideways, and along the car. */
export function timeBendMoves(rounds: number): { readonly sideways: number; readonly along: number } {
  const family = readCar();
  let moves = 0;
  const move = (along: boolean) => (): void => {
    moves += 1;
    const amount = 0.1 + 0.4 * ((moves * 0.618) % 1);
    const motion = { kind: "bend", by: (along ? 0.3 : amount) * G, along: (along ? -amount : -0.2) * G } as const;
    if ("findings" in computeCar({ family, motion })) throw new Error("the car does not stand there");
  };
  for (let i = 0; i < SETTLING; i++) move(i % 2 === 0)();
  return { sideways: medianMilliseconds(rounds, move(false)), along: medianMilliseconds(rounds, move(true)) };
}
