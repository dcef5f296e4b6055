import { quantityForms } from "../cases/standard-readings.ts";
import type { Cause } from "./cause.ts";

/** Where to look for a cause that is no single place of the underside (from memory). */
const elsewhere: Readonly<Record<string, string>> = {
  "arm-bolt-loose": "every bolt of the arms, front and rear; with the torque wrench, the car on its wheels",
  "coilover-collar-or-lock-ring-loose": "collars and lock rings of the coilovers, all four wheels",
  "hub-face-dirty-or-running-out": "hub faces under the discs; disc off and cleaned, run-out by dial",
  "dust-shield-or-stone-contact": "dust shields behind the discs, all four wheels",
  "bent-arm-knuckle-or-strut": "arms, knuckles and struts; one side against the other with a tape",
  "steering-wheel-not-centred": "steering wheel and angle sensor, wheels straight ahead on the stand",
  "prop-shaft": "along the tunnel, from the gearbox to the rear axle",
  "engine-or-gearbox-mount": "between engine or gearbox and the body",
  "damper-not-coded": "in the control unit of the dampers, with a tester",
  "compressor-relay-valve-block": "air supply: compressor, relay and valve block",
  "exhaust-contact": "along the exhaust, its heat shields and the undertray",
  "normal-property-of-car-or-road": "no part of it; the same car elsewhere, and another such car here",
  "bushes-tightened-hanging": "inner bolts of the rubber bushes, all wheels; whether they were tightened standing",
  "drive-torque-steer": "driven axle under power: tyres, shafts, differential",
};

/** Where a cause is looked for that has no place on this car's underside, in words. */
export const elsewhereWords = (cause: Cause): string => {
  const read = (cause.about ?? []).flatMap((about) =>
    about in quantityForms ? [quantityForms[about as keyof typeof quantityForms].label.toLowerCase()] : [],
  );
  const axle = cause.axle === null ? "all wheels" : `${cause.axle} axle`;
  return (
    elsewhere[cause.id] ?? (read.length > 0 ? `read on Readings: ${read.join(", ")}, ${axle}` : "no part of this car")
  );
};
