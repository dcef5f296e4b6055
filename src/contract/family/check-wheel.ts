import type { Finding } from "#numeric";
import { mmFromMetres } from "#quantity";
import { parseTyreSize, silhouetteRanges } from "#vehicle";
import { familyFinding, placeWords } from "./family-finding.ts";
import { asObject, type LooseAxle } from "./loose-axle.ts";

/** How far figures that say the same may differ, mm (invented: more than rounding and camber make). */
const TRACK_TOLERANCE_MM = 20;
const WHEELBASE_TOLERANCE_MM = 30;
const GROUND_TOLERANCE_MM = 15;
/** Below this share of its free radius a tyre is flat (invented). */
const LEAST_LOADED_SHARE = 0.85;

/** Wheel, tyre, track and wheelbase against each other. */
export function checkWheel(axle: LooseAxle, wheelbaseMm: number | undefined): Finding[] {
  return [...tyreSize(axle), ...sides(axle), ...trackAndWheelbase(axle, wheelbaseMm), ...ground(axle)];
}

function tyreSize(axle: LooseAxle): Finding[] {
  const raw = asObject(axle.raw.wheel);
  if (typeof raw.tyre_size !== "string" || parseTyreSize(raw.tyre_size)) return [];
  const given = ["tyre_width_mm", "free_radius_mm", "rim_diameter_mm"].every((key) => raw[key] !== undefined);
  return given
    ? []
    : [
        familyFinding(
          "tyre-size-unreadable",
          `${axle.name}.wheel.tyre_size`,
          raw.tyre_size,
          "a size such as 225/50 R17",
          "For another form of size give tyre_width_mm, free_radius_mm and rim_diameter_mm as well.",
        ),
      ];
}

function sides(axle: LooseAxle): Finding[] {
  const found: Finding[] = [];
  const centre = axle.wheel?.centre_mm;
  if (centre && centre[1] <= 0) {
    found.push(
      familyFinding(
        "wheel-on-wrong-side",
        `${axle.name}.wheel.centre_mm`,
        placeWords(centre),
        "the left wheel: y above zero",
        "y points left; the right wheel is the mirror image.",
      ),
    );
  }
  axle.links.forEach(({ outer }, index) => {
    if (outer && outer[1] <= 0) {
      found.push(
        familyFinding(
          "point-on-wrong-side",
          `${axle.name}.links[${index}].outer_mm`,
          placeWords(outer),
          "a point of the left wheel: y above zero",
          "y points left; the right side is the mirror image.",
        ),
      );
    }
  });
  return found;
}

function trackAndWheelbase(axle: LooseAxle, wheelbaseMm: number | undefined): Finding[] {
  const centre = axle.wheel?.centre_mm;
  if (!centre) return [];
  const found: Finding[] = [];
  if (axle.trackMm !== undefined && centre[1] > 0 && Math.abs(axle.trackMm - 2 * centre[1]) > TRACK_TOLERANCE_MM) {
    found.push(
      familyFinding(
        "track-against-wheel-centre",
        `${axle.name}.track_mm`,
        axle.trackMm,
        `twice the y of the wheel centre, ${2 * centre[1]} mm`,
        "The track is measured between the wheel centres; y from the middle of the car.",
      ),
    );
  }
  const wanted = axle.name === "front" ? 0 : wheelbaseMm === undefined ? undefined : -wheelbaseMm;
  if (wanted !== undefined && Math.abs(centre[0] - wanted) > WHEELBASE_TOLERANCE_MM) {
    const wheelbase = axle.name === "rear" && wheelbaseIsTheSlip(-wanted, -centre[0]);
    found.push(
      wheelbase
        ? wheelbaseFinding(-wanted, -centre[0])
        : familyFinding(
            "wheel-centre-against-wheelbase",
            `${axle.name}.wheel.centre_mm[0]`,
            centre[0],
            `${wanted}, in millimetres`,
            "x counts forward from the front axle, so the rear axle lies at minus the wheelbase.",
          ),
    );
  }
  return found;
}

const isWheelbase = (mm: number): boolean => {
  const [shortest, longest] = silhouetteRanges.wheelbase;
  return mm >= mmFromMetres(shortest) && mm <= mmFromMetres(longest);
};

/** Whether the wheelbase is none of a car while the wheel centre lies where one would be. */
const wheelbaseIsTheSlip = (wheelbase: number, standing: number): boolean =>
  !isWheelbase(wheelbase) && isWheelbase(standing);

function wheelbaseFinding(wheelbase: number, standing: number): Finding {
  const inCentimetres = Math.abs(10 * wheelbase - standing) <= 10 * WHEELBASE_TOLERANCE_MM;
  return familyFinding(
    "wheelbase-against-wheel-centre",
    "wheelbase_mm",
    wheelbase,
    `about ${standing} mm, where the rear wheel centre stands`,
    inCentimetres ? `Was it typed in centimetres? In millimetres it would be ${10 * wheelbase}.` : "Check the figure.",
  );
}

function ground(axle: LooseAxle): Finding[] {
  const { wheel } = axle;
  if (!wheel) return [];
  const free = wheel.free_radius_mm ?? freeRadiusMm(wheel.tyre_size);
  const standing = wheel.centre_mm[2] / Math.cos((wheel.camber_deg * Math.PI) / 180);
  const loaded = wheel.loaded_radius_mm ?? standing;
  const path = `${axle.name}.wheel`;
  if (wheel.loaded_radius_mm !== undefined && Math.abs(standing - loaded) > GROUND_TOLERANCE_MM) {
    return [
      familyFinding(
        "wheel-not-on-ground",
        `${path}.loaded_radius_mm`,
        loaded,
        `about ${Math.round(standing)} mm, so that the tyre stands on z = 0`,
        "z counts from the ground the car stands on at ride height.",
      ),
    ];
  }
  const at = wheel.loaded_radius_mm === undefined ? `${path}.centre_mm[2]` : `${path}.loaded_radius_mm`;
  const shown = Math.round(loaded * 10) / 10;
  const hint = "A standing tyre is pressed in by 5 to 20 mm; check height and tyre size.";
  if (free !== undefined && loaded > free + 1) {
    return [
      familyFinding(
        "loaded-radius-too-large",
        at,
        shown,
        `less than the free radius, ${Math.round(free * 10) / 10} mm`,
        hint,
      ),
    ];
  }
  if (loaded < LEAST_LOADED_SHARE * (free ?? 0) || loaded <= 0) {
    return [
      familyFinding(
        "loaded-radius-too-small",
        at,
        shown,
        `a little less than the free radius, ${Math.round((free ?? 0) * 10) / 10} mm`,
        hint,
      ),
    ];
  }
  return [];
}

function freeRadiusMm(size: string): number | undefined {
  const parsed = parseTyreSize(size);
  return parsed ? parsed.freeRadius * 1000 : undefined;
}
