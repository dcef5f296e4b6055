import type { Scene } from "./scene.ts";
import { type SvgNode, type SvgOptions, svgTreeOf } from "./svg-tree.ts";

/** Attributes that SVG itself writes in camel case. */
const CAMEL = new Set(["viewBox", "patternUnits", "patternTransform"]);

const escapeText = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

const attributeName = (name: string): string =>
  CAMEL.has(name) ? name : name.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

/** An SVG element and all it holds as text. */
export function formatSvgNode(node: SvgNode | string): string {
  if (typeof node === "string") return escapeText(node);
  const attributes = Object.entries(node.attributes).map(
    ([name, value]) => ` ${attributeName(name)}="${escapeText(String(value))}"`,
  );
  const open = `<${node.tag}${attributes.join("")}`;
  if (node.children.length === 0) return `${open}/>`;
  return `${open}>${node.children.map(formatSvgNode).join("")}</${node.tag}>`;
}

/** A scene as the text of one SVG file: same scene, same text. */
export function formatSvg(scene: Scene, options: SvgOptions): string {
  return formatSvgNode(svgTreeOf(scene, options));
}
