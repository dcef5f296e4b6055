import { useCallback } from "react";
import { decimalsOf, formatNumber, isSignSure } from "#casework";
import { drawTravelLines } from "#drawing";
import type { AxleName } from "../../car.ts";
import { FittedScene, type SceneRoom } from "../../scene/fitted-scene.tsx";
import { MarginSection } from "../../shell/margin-section.tsx";
import { pointWords } from "../model/coordinate-words.ts";
import type { AngleChange, TravelEffect } from "./travel-effect.ts";

const isSure = ({ value, sd }: AngleChange): boolean => isSignSure(value, sd);

const NAMES = { toe: "toe, °, in is +", camber: "camber, °" } as const;
const leastHeight = () => 210;

const percent = (share: number): string => `${formatNumber(100 * share, 0)} %`;

const travelWords = (travel: number): string => `${formatNumber(Math.abs(travel), 0)} mm ${travel < 0 ? "down" : "up"}`;

/** What a point is called by its fields. */
type NamePoint = (point: string) => string;

const unsureWords = ({ most }: AngleChange, nameOf: NamePoint): string =>
  most === null
    ? "its sign is not sure"
    : `its sign is not sure; ${nameOf(most.point)}, ${most.axisWords}, does most to it (${percent(most.share)})`;

interface ChangeLineProps {
  readonly name: string;
  readonly change: AngleChange;
  readonly nameOf: NamePoint;
}

const ChangeLine = ({ name, change, nameOf }: ChangeLineProps) => {
  const decimals = decimalsOf({ u: change.sd, unit: "deg", band: null });
  const figure = (value: number): string => `${value > 0 ? "+" : ""}${formatNumber(value, decimals)}°`;
  const was =
    change.kept !== null && figure(change.kept) !== figure(change.value) ? `, was ${figure(change.kept)}` : "";
  return (
    <li className="change-line">
      <span>
        {name}, {travelWords(change.travel)}
      </span>
      {isSure(change) ? (
        <span>
          <strong className="change-figure">{figure(change.value)}</strong>
          {was}
        </span>
      ) : (
        <span className="label">{unsureWords(change, nameOf)}</span>
      )}
    </li>
  );
};

interface TravelGlanceProps {
  readonly effect: TravelEffect;
  readonly sheet: unknown;
  /** The axle that is open; null where none is. */
  readonly axle: AxleName | null;
}

/** What the points do at a glance: toe and camber over travel as kept and as entered, and how far they change. */
export const TravelGlance = ({ effect, sheet, axle }: TravelGlanceProps) => {
  const names = (["toe", "camber"] as const).filter((name) => effect[name].changes.every(isSure));
  const draw = useCallback(
    (room: SceneRoom) => {
      const shown = (["toe", "camber"] as const).filter((name) => effect[name].changes.every(isSure));
      return drawTravelLines(
        shown.map((name) => ({ title: NAMES[name], kept: effect[name].kept, entered: effect[name].entered })),
        room,
      );
    },
    [effect],
  );
  return (
    <MarginSection title="What it does over travel, left wheel">
      <ul className="change-lines">
        {(["toe", "camber"] as const).flatMap((name) =>
          effect[name].changes.map((change) => (
            <ChangeLine
              key={`${name} ${change.travel}`}
              name={name === "toe" ? "Toe" : "Camber"}
              change={change}
              nameOf={(point) => (axle === null ? point : pointWords(sheet, axle, point))}
            />
          )),
        )}
      </ul>
      {names.length === 0 || effect.toe.entered.length === 0 ? null : (
        <div className="travel-lines">
          <FittedScene draw={draw} leastHeight={leastHeight} />
        </div>
      )}
      <p className="note">
        Change from ride height, rigid links, every point as well known as the sheet says. Thin: as kept; thick: as
        entered. Not drawn where a sign is not sure.
      </p>
    </MarginSection>
  );
};
