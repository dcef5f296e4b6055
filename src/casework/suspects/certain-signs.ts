import type { SignName } from "../cases/look.ts";
import type { PlaceFinding } from "../cases/place-finding.ts";

const TORN: readonly SignName[] = ["web-torn", "separated", "metal-contact"];

/**
 * Signs that are the cause itself, so that nobody sees them where it is not: torn through, metal on metal, fluid gone,
 * broken. By cause; source key trade-causes in docs/sources.md (from memory).
 */
export const certainSigns: Readonly<Record<string, readonly SignName[]>> = {
  "bar-link": ["separated"],
  "top-mount": ["separated"],
  "lower-ball-joint": ["separated"],
  "upper-outer-joint": ["separated"],
  "upper-inner-bush": TORN,
  "front-lower-bush": TORN,
  "hydraulic-bush-leaked": ["fluid-gone", ...TORN],
  "rear-toe-link-joint": TORN,
  "rear-camber-bush": TORN,
  "rear-trailing-bush": TORN,
  "damper-eye": TORN,
  "subframe-loose": ["separated", "loose-bolt"],
  "bump-stop-crumbled-or-missing": ["crumbled"],
  "coil-spring-broken": ["broken"],
  "outer-tie-rod-joint-play": ["separated"],
  "inner-tie-rod-joint-play": ["separated"],
  "rack-mounting-loose": ["loose-bolt"],
  "wheel-fasteners-loose": ["loose-bolt"],
  "disc-hot-spots-or-cracks": ["cracked-edge"],
  "pads-worn-out": ["metal-contact"],
  "caliper-guide-seized": ["seized"],
  "caliper-piston-seized": ["seized"],
  "flexible-hose-swollen-or-closed": ["bulge"],
  "tyre-flat-spot-or-belt-damage": ["bulge", "cord-seen"],
};

/** True where a sign that is the cause itself was seen at one of its places. */
export const isSeenForCertain = (cause: string, places: readonly PlaceFinding[]): boolean =>
  places.some(({ looks }) => (certainSigns[cause] ?? []).some((sign) => looks?.signs.includes(sign)));
