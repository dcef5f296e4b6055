import type { Figure } from "../fault-effect.ts";
import { bandOf, changesOf, deviationsOf } from "./change-band.ts";
import type { FaultStates, PairBand } from "./fault-pair.ts";
import { formatBandSizes } from "./format-figure.ts";
import { inOrOut } from "./phrases.ts";
import { countReadings, type Reading, readingOf, readingWays } from "./settle.ts";

/** As many readings as anyone takes for one figure, and the least share of its variance that one is taken for (invented). */
const MOST_READINGS = 4;
const LEAST_SHARE = 0.04;
/** Readings that leave the band wider than this share of it are not worth naming (invented). */
const WORTH = 0.95;

/**
 * The readings that would narrow a printed change of toe most, and where it would lie then, in words; null where the
 * figure is not printed or nothing that can be read would narrow it.
 */
export function narrowingWords(states: FaultStates, pair: PairBand, figure: Figure): string | null {
  if (!figure.signSure || figure.band === null) return null;
  const { jets } = states.sound.band;
  const { assembly } = states.model;
  const [middle] = changesOf(states, pair, "toe");
  const deviations = [...deviationsOf(states)];
  const readings: Reading[] = [];
  const order = jets.shares(middle.jet).map((share, i) => ({ share, i }));
  for (const { share, i } of order.toSorted((a, b) => b.share - a.share)) {
    if (share < LEAST_SHARE || readings.length === MOST_READINGS) break;
    const { after, reading } = readingOf(jets, i, assembly);
    if (after >= (deviations[i] as number)) continue;
    deviations[i] = after;
    readings.push(reading);
  }
  const changes = changesOf(states, pair, "toe", deviations);
  const band = bandOf(changes);
  const [low, high] = figure.band;
  if (readings.length === 0 || band[1] - band[0] > WORTH * (high - low)) return null;
  const then = formatBandSizes({ ...figure, u: changes[0].sd, band });
  const words = `${readings.length === 1 ? "One reading would narrow it most" : `${countReadings(readings)} would narrow it most`}${then === null ? "" : `, to ${then} further ${inOrOut(figure.value)} (95 %)`}.`;
  return `${words} ${readingWays(readings)}`;
}
