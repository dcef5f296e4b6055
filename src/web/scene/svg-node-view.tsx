import { createElement, type ReactNode } from "react";
import type { SvgNode } from "#drawing";

/** An element of a drawing as React has it. A drawing is replaced as a whole, so the place in the list is the identity of a child. */
export const renderSvgNode = (node: SvgNode | string, place: number): ReactNode =>
  typeof node === "string"
    ? node
    : createElement(
        node.tag,
        { ...node.attributes, key: place },
        node.children.length === 0 ? undefined : node.children.map(renderSvgNode),
      );
