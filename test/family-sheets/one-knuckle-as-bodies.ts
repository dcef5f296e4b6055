type Sheet = Record<string, unknown>;
type Place = readonly [number, number, number] | { readonly at_mm: readonly [number, number, number] };

interface LinkSheet {
  readonly name: string;
  readonly label?: string;
  readonly arm?: string;
  readonly inner_mm: Place;
  readonly outer_mm: Place;
  readonly steered?: boolean;
  readonly inner_joint?: Sheet;
  readonly outer_joint?: Sheet;
  readonly member_n_per_mm?: number;
}

interface AxleSheet extends Sheet {
  readonly links: readonly LinkSheet[];
  readonly spring: { readonly body_mm: Place; readonly seat: SeatSheet; readonly rate_n_per_mm: number };
  readonly damper: { readonly body_mm: Place; readonly seat: SeatSheet };
}

type SeatSheet =
  | { readonly on: "link"; readonly link: string; readonly fraction: number }
  | { readonly on: "knuckle"; readonly moving_mm: Place };

const place = (at: Place): readonly [number, number, number] => ("at_mm" in at ? at.at_mm : at);

/** A family sheet whose rear axle of five links, spring and damper on its knuckle, is written as bodies and joints. */
export function oneKnuckleAsBodies(family: Sheet & { readonly rear: AxleSheet }): Sheet {
  const { links, spring, damper, ...rest } = family.rear;
  const ends = links.flatMap(({ name, inner_mm, outer_mm }) => [
    { name: `${name}.inner`, at_mm: place(inner_mm) },
    { name: `${name}.outer`, at_mm: place(outer_mm) },
  ]);
  const strut = (
    which: "spring" | "damper",
    { body_mm, seat }: { readonly body_mm: Place; readonly seat: SeatSheet },
  ) => {
    if (seat.on !== "knuckle") throw new Error("a seat on the knuckle was meant");
    return {
      points: [
        { name: `${which}.top`, at_mm: place(body_mm) },
        { name: `${which}.foot`, at_mm: place(seat.moving_mm) },
      ],
      part: { from: { on: "car-body", at: `${which}.top` }, to: { on: "knuckle", at: `${which}.foot` } },
    };
  };
  const [coil, tube] = [strut("spring", spring), strut("damper", damper)];
  const points = [...ends, ...coil.points, ...tube.points];
  const rubber = links.flatMap(({ name, inner_joint, outer_joint }) =>
    (
      [
        ["from", inner_joint],
        ["to", outer_joint],
      ] as const
    ).flatMap(([end, joint]) => {
      const { outer_diameter_mm: _diameter, length_mm: _length, label: _label, fluid: _fluid, ...rates } = joint ?? {};
      return rates.radial_n_per_mm === undefined ? [] : [{ part: name, end, ...rates }];
    }),
  );
  return {
    ...family,
    rear: {
      ...rest,
      layout: "bodies",
      bodies: {
        layout: {
          name: "Five links as bodies",
          bodies: ["knuckle"],
          points,
          wheel: { on: "knuckle" },
          joints: [],
          links: links.map(({ name, label, steered }) => ({
            name,
            ...(label ? { label } : {}),
            from: { on: "car-body", at: `${name}.inner` },
            to: { on: "knuckle", at: `${name}.outer` },
            steered: steered ?? false,
          })),
          spring: coil.part,
          damper: tube.part,
        },
        spring_n_per_mm: spring.rate_n_per_mm,
        rubber,
        members: links.flatMap(({ name, member_n_per_mm }) =>
          member_n_per_mm === undefined ? [] : [{ link: name, n_per_mm: member_n_per_mm }],
        ),
        known_points: coil.points.map(({ name }) => ({ point: name, sd_mm: [0, 0, 0] })),
      },
    },
  };
}
