import { TravelSweep } from "#engines/linkage";
import { geometryFromWire } from "../../../src/contract/doors/linkage-reading.ts";
import { cornerObject, seatSchema } from "../../../src/contract/doors/linkage-schema.ts";
import { absolute, type Row, Score } from "../score.ts";
import { askPositions } from "./geometry-rows.ts";

const SOURCE = "check-values-geometry";
const angle = absolute(2e-6);
const length = absolute(2e-5);

const wishboneLinks = [
  { name: "lower_front", inner_mm: [150, 350, 200], outer_mm: [5, 740, 190] },
  { name: "lower_rear", inner_mm: [-200, 360, 205], outer_mm: [5, 740, 190] },
  { name: "upper_front", inner_mm: [100, 430, 520], outer_mm: [-20, 690, 540] },
  { name: "upper_rear", inner_mm: [-180, 440, 510], outer_mm: [-20, 690, 540] },
  { name: "tie_rod", inner_mm: [-120, 380, 260], outer_mm: [-140, 720, 255], steered: true },
];
/** Any spring on the lower arm: held, it leaves the axis through the joints. */
const wishboneSpring = { body_mm: [0, 560, 650], on: ["lower_front", "lower_rear"], moving_mm: [0, 600, 200] };
const wishboneWheel = { centre_mm: [0, 760, 310], camber_deg: -0.5, toe_deg: 0.1, loaded_radius_mm: 310 };
const wishbone = { links: wishboneLinks, wheel: wishboneWheel, spring: wishboneSpring };

const strut = {
  links: [
    { name: "lower_front", inner_mm: [60, 360, 205], outer_mm: [8, 735, 185] },
    { name: "lower_rear", inner_mm: [-250, 365, 215], outer_mm: [8, 735, 185] },
    { name: "tie_rod", inner_mm: [-130, 370, 245], outer_mm: [-145, 705, 240], steered: true },
  ],
  strut: { top_mm: [-45, 585, 900], axis_point_mm: [-25, 620, 560] },
  wheel: { centre_mm: [0, 755, 305], camber_deg: -0.6, toe_deg: 0.08, loaded_radius_mm: 305 },
  spring: { body_mm: [-45, 585, 900], on: "knuckle", moving_mm: [-25, 620, 560] },
};

/** Travel; camber, toe, centre x, centre y, caster, inclination. */
const wishboneTable = [
  [-80, 0.528215, -0.10768, -0.18559, 751.26136, 3.408546, 7.109681],
  [-40, 0.166242, 0.000841, -0.01437, 758.0747, 3.738526, 7.467859],
  [-20, -0.129612, 0.050508, 0.01124, 759.6346, 3.9099, 7.761805],
  [0, -0.5, 0.1, 0, 760, 4.085617, 8.130102],
  [20, -0.946679, 0.151354, -0.04638, 759.17956, 4.265919, 8.574354],
  [40, -1.473852, 0.206689, -0.12652, 757.16802, 4.451198, 9.098583],
  [80, -2.799779, 0.33918, -0.38364, 749.47868, 4.839211, 10.416111],
] as const;

/** The same, and the distance from the top to the knuckle point. */
const strutTable = [
  [-80, 0.885795, 0.659001, -1.2475, 744.86637, 3.61675, 9.762044, 418.03079],
  [-40, 0.010387, 0.455558, -0.49591, 751.86754, 3.913941, 10.913717, 380.55887],
  [0, -0.6, 0.08, 0, 755, 4.239347, 11.848266, 342.38137],
  [40, -0.90873, -0.48366, 0.20981, 754.44609, 4.598243, 12.542526, 303.34434],
  [80, -0.852978, -1.269347, 0.07942, 750.27777, 4.997223, 12.953419, 263.28747],
] as const;

function compareTable(score: Score, corner: object, table: readonly (readonly number[])[]): void {
  const positions = askPositions(
    corner,
    table.map((row) => row[0] as number),
  );
  table.forEach(([, camber, toe, x, y, caster, inclination], i) => {
    const p = positions[i];
    const centre = (p?.wheel_centre_mm ?? []) as unknown as readonly number[];
    score.compareAll("camber_deg, toe_deg", [p?.camber_deg, p?.toe_deg], [camber as number, toe as number], angle);
    score.compareAll("wheel_centre_mm", centre.slice(0, 2), [x as number, y as number], length);
    score.compareAll(
      "caster_deg, inclination_deg",
      [p?.caster_deg, p?.inclination_deg],
      [caster as number, inclination as number],
      angle,
    );
  });
}

/** Change per metre between 1 mm of droop and 1 mm of bump, as the table prints it. */
function compareGradients(score: Score, corner: object, toe: number, camber: number): void {
  const [low, high] = askPositions(corner, [-1, 1]);
  const slope = (key: string): number => ((high?.[key] ?? Number.NaN) - (low?.[key] ?? Number.NaN)) * 500;
  score.compare("change over 2 mm, deg/m", slope("toe_deg"), toe, absolute(5e-6));
  score.compare("change over 2 mm, deg/m", slope("camber_deg"), camber, absolute(5e-6));
}

/** All rows of the spatial corners in tables. */
export function scoreSpatial(): readonly Row[] {
  const axis = new Score("steering axis through two joints (G16)", SOURCE);
  const upright = { ...wishbone, wheel: { ...wishboneWheel, camber_deg: 0, toe_deg: 0 } };
  const [p] = askPositions(upright, [0]);
  axis.compareAll(
    "caster_deg, inclination_deg",
    [p?.caster_deg, p?.inclination_deg],
    [4.085617, 8.130102],
    absolute(1e-4),
  );
  axis.compareAll("trail_mm, scrub_mm", [p?.trail_mm, p?.scrub_mm], [18.5714, -7.1429], absolute(1e-4));

  const doubleWishbone = new Score("spatial double wishbone (G17)", SOURCE);
  compareTable(doubleWishbone, wishbone, wishboneTable);
  compareGradients(doubleWishbone, wishbone, 2.50411, -20.40195);

  const strutted = new Score("strut with a lower arm (G18)", SOURCE);
  compareTable(strutted, strut, strutTable);
  compareGradients(strutted, strut, -11.64107, -11.68891);
  const sweep = new TravelSweep(
    geometryFromWire(
      cornerObject().parse({ links: strut.links, strut: strut.strut, wheel: strut.wheel }),
      seatSchema.parse(strut.spring),
    ),
  );
  for (const row of strutTable) {
    const state = sweep.solve({ travel: row[0] / 1000, rack: 0 });
    const got = "pose" in state && state.springLength !== null ? state.springLength * 1000 : null;
    strutted.compare("top to knuckle point, mm", got, row[7], length);
  }
  return [...axis.rows(), ...doubleWishbone.rows(), ...strutted.rows()];
}
