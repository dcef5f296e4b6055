export { formatSvg, formatSvgNode } from "./format-svg.ts";
export type * from "./scene.ts";
export { type SvgNode, type SvgOptions, svgNodesOf, svgPatterns, svgTreeOf } from "./svg-tree.ts";
export { drawGradeMark } from "./symbols/grade-mark.ts";
export { drawTitleBlock, type TitleBlock, type TitleCell, titleBlockHeight } from "./symbols/title-block.ts";
export { computeStyleWidth, computeTextWidth, wrapText } from "./text-width.ts";
export * from "./tokens.ts";
