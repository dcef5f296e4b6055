import type { Axle } from "../family.ts";
import type { Access } from "../family-work.ts";

/** Own hours of the work on one side that depends on the layout, shared access not counted. Every figure is invented. */
export interface LayoutHours {
  /** A lower or single link, off and on. */
  readonly link: number;
  /** A link or arm above the wheel centre. */
  readonly upperLink: number;
  readonly arm: number;
  /** The trailing arm's bush, pressed with the arm swung down. */
  readonly trailingBush: number;
  readonly damper: number;
  readonly topMount: number;
  readonly spring: number;
  /** Access: damper or strut out and in. */
  readonly damperOut: number;
}

export type LayoutPlace = "front-five-link" | "rear-five-link" | "double-wishbone" | "strut" | "trailing-arm";

/** Invented start values, one row per layout. */
export const usualHours: Readonly<Record<LayoutPlace, LayoutHours>> = {
  "front-five-link": {
    link: 0.9,
    upperLink: 0.55,
    arm: 1.1,
    trailingBush: 1.5,
    damper: 0.35,
    topMount: 0.4,
    spring: 0.4,
    damperOut: 0.95,
  },
  "rear-five-link": {
    link: 0.75,
    upperLink: 0.85,
    arm: 1.2,
    trailingBush: 1.5,
    damper: 0.25,
    topMount: 0.3,
    spring: 0.65,
    damperOut: 0.45,
  },
  "double-wishbone": {
    link: 0.8,
    upperLink: 0.7,
    arm: 1.15,
    trailingBush: 1.5,
    damper: 0.35,
    topMount: 0.4,
    spring: 0.45,
    damperOut: 0.85,
  },
  strut: {
    link: 0.7,
    upperLink: 0.7,
    arm: 1.05,
    trailingBush: 1.5,
    damper: 0.4,
    topMount: 0.35,
    spring: 0.35,
    damperOut: 1.1,
  },
  "trailing-arm": {
    link: 0.7,
    upperLink: 0.75,
    arm: 1.1,
    trailingBush: 1.3,
    damper: 0.25,
    topMount: 0.3,
    spring: 0.5,
    damperOut: 0.4,
  },
};

export function hoursOf(axle: Axle): LayoutHours {
  // A linkage of several bodies has about as many joints to open as five links.
  if (axle.layout !== "five-link" && axle.layout !== "bodies") return usualHours[axle.layout];
  return axle.name === "front" ? usualHours["front-five-link"] : usualHours["rear-five-link"];
}

/** Work that several operations share; invented start values. */
export function usualAccess(front: Axle, rear: Axle): Access[] {
  const perAxle = [front, rear].flatMap((axle): Access[] => [
    {
      id: `${axle.name}-damper-out`,
      label: `${axle.strut ? "Strut" : "Damper"} out and in, ${axle.name}`,
      hours: hoursOf(axle).damperOut,
      scope: "corner",
    },
  ]);
  return [
    { id: "lift", label: "Lift and lower the car", hours: 0.15, scope: "car" },
    { id: "wheel-off", label: "Wheel off and on", hours: 0.1, scope: "corner" },
    { id: "undertray", label: "Undertray off and on", hours: 0.2, scope: "axle" },
    { id: "caliper-aside", label: "Caliper hung aside", hours: 0.2, scope: "corner" },
    { id: "knuckle-free", label: "Knuckle freed from one joint", hours: 0.25, scope: "corner" },
    { id: "subframe-lowered", label: "Subframe lowered on stands", hours: 0.9, scope: "axle" },
    { id: "fluid-open", label: "Fluid circuit opened, bled and checked", hours: 0.4, scope: "axle" },
    ...perAxle,
  ];
}
