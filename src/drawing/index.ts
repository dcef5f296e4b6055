export {
  type AssumedFigure,
  assumedMark,
  type Family,
  gradeWords,
  isAssumed,
  layoutDoubt,
  leftOutOrigin,
} from "#vehicle";
export type { PositionState, PositionStates } from "./below/position-state.ts";
export { type BodiesOptions, drawBodies } from "./bodies/draw-bodies.ts";
export { axlePositionsOf, drawAxle } from "./corner/draw-axle.ts";
export { type CornerOptions, cornerPositions, drawCorner } from "./corner/draw-corner.ts";
export { drawFamilySheet, type FamilySheetOptions } from "./family-sheet/draw-family-sheet.ts";
export { formatSvg, formatSvgNode } from "./format-svg.ts";
export { drawGeometry, type GeometryOptions } from "./geometry/draw-geometry.ts";
export { drawHeldCorner, type HeldCornerOptions } from "./geometry/draw-held-corner.ts";
export { drawMovingCorner, type MovingCornerOptions } from "./geometry/draw-moving-corner.ts";
export {
  type BesideCorner,
  drawTurnedCorner,
  type EyePlace,
  type TurnedCornerOptions,
} from "./geometry/draw-turned-corner.ts";
export { type DrawnPoint, drawHardPoints, type HardPointOptions } from "./hard-points/draw-hard-points.ts";
export { drawTravelLines, type TravelLine, type TravelLinesOptions } from "./hard-points/draw-travel-lines.ts";
export { nearestPoint } from "./nearest-point.ts";
export { drawNumberedCar, drawNumberRing, type NumberedPlaces } from "./owners-page/draw-numbered-car.ts";
export { drawRemedyBar, type RemedyBar } from "./owners-page/draw-remedy-bar.ts";
export { drawBush } from "./plot/draw-bush.ts";
export { type CurveOptions, drawCurves } from "./plot/draw-curves.ts";
export { drawShake, type ShakeOptions } from "./plot/draw-shake.ts";
export { drawTravelPlots, type TravelPlotsOptions } from "./plot/draw-travel-plots.ts";
export type { FormatFigure } from "./plot/format-figure.ts";
export type * from "./scene.ts";
export { type SvgNode, type SvgOptions, svgNodesOf, svgPatterns, svgTreeOf } from "./svg-tree.ts";
export { drawGradeMark } from "./symbols/grade-mark.ts";
export { drawSeenMark, seenNames } from "./symbols/seen-mark.ts";
export { drawTitleBlock, type TitleBlock, type TitleCell, titleBlockHeight } from "./symbols/title-block.ts";
export { computeStyleWidth, computeTextWidth, shortenMeasured, wrapMeasured, wrapText } from "./text-width.ts";
export * from "./tokens.ts";
export { groupOf, groupOfTarget, groupTargetId, groupWords, type PlaceGroup } from "./underside/car-targets.ts";
export { type Detail, hasDetail } from "./underside/detail.ts";
export { drawUnderside, type UndersideOptions } from "./underside/draw-underside.ts";
export { fullName, positionName, positionWithId } from "./underside/position-labels.ts";
export { familyRungWords } from "./underside/rung-words.ts";
