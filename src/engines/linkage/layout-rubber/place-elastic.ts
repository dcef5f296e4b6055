import type { Mechanism } from "../mechanism.ts";
import type { Pose } from "../pose.ts";
import { type Placed, PlacedMeasure } from "./placed-measure.ts";
import { PlacedSeat } from "./placed-seat.ts";
import { PlacedSwing, PlacedTwist } from "./placed-turn.ts";
import type { ElasticMeasure } from "./turn-measure.ts";

/** Any elastic measure at a pose and a rack position (metres). */
export function placeElastic(mechanism: Mechanism, measure: ElasticMeasure, pose: Pose, rack: number): Placed {
  switch (measure.kind) {
    case "swing":
      return new PlacedSwing(mechanism, measure, pose, rack);
    case "twist":
      return new PlacedTwist(mechanism, measure, pose, rack);
    case "seated-offset":
      return new PlacedSeat(mechanism, measure, pose, rack);
    case "distance":
    case "offset":
      return new PlacedMeasure(mechanism, measure, pose, rack);
  }
}
