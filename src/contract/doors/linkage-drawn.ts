import type { SampledChanges, SampledFigure } from "#engines/linkage";
import { degreesFromRadians as deg } from "#quantity";

const figure = (f: SampledFigure) => ({
  mean: deg(f.mean),
  sd: deg(f.sd),
  low: deg(f.low),
  high: deg(f.high),
  share_above: f.shareAbove,
});

/** Changes over drawn geometries as they are sent; null where fewer than two reach the travel. */
export const drawnToWire = (sampled: SampledChanges | null) =>
  sampled && {
    camber_change: figure(sampled.camberChange),
    toe_change: figure(sampled.toeChange),
    unreachable: sampled.unreachable,
  };
