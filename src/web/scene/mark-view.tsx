import type { Mark } from "#drawing";
import { GradeShape } from "./grade-mark.tsx";
import { fillPaint, strokePaint } from "./paint.ts";

const opacityOf = (opacity: number | undefined) => (opacity === undefined ? {} : { opacity });

/** One mark of a scene as SVG. */
export const MarkView = ({ mark }: { readonly mark: Mark }) => {
  switch (mark.kind) {
    case "path":
      return <path d={mark.d} fill={fillPaint(mark.fill)} {...strokePaint(mark.stroke)} {...opacityOf(mark.opacity)} />;
    case "circle":
      return (
        <circle
          cx={mark.cx}
          cy={mark.cy}
          r={mark.r}
          fill={fillPaint(mark.fill)}
          {...strokePaint(mark.stroke)}
          {...opacityOf(mark.opacity)}
        />
      );
    case "text":
      return (
        <text
          x={mark.x}
          y={mark.y}
          className={`scene-text scene-${mark.style}`}
          textAnchor={mark.anchor ?? "start"}
          {...(mark.colour === undefined ? {} : { style: { fill: `var(--${mark.colour})` } })}
          {...(mark.rotate === undefined ? {} : { transform: `rotate(${mark.rotate} ${mark.x} ${mark.y})` })}
        >
          {mark.text}
        </text>
      );
    case "grade":
      return <GradeShape grade={mark.grade} close={mark.close ?? false} cx={mark.cx} cy={mark.cy} size={mark.size} />;
    case "group":
      return (
        <g {...(mark.id === undefined ? {} : { "data-group": mark.id })}>
          <MarkList marks={mark.marks} />
        </g>
      );
  }
};

/** Marks in drawing order. A scene is replaced as a whole, so the place in the list is the identity of a mark. */
export const MarkList = ({ marks }: { readonly marks: readonly Mark[] }) =>
  // biome-ignore lint/suspicious/noArrayIndexKey: marks have no identity beside their place, and a scene never changes in part
  marks.map((mark, place) => <MarkView key={place} mark={mark} />);
