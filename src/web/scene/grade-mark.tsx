import type { Grade } from "#vehicle";

const RING = "M10 3a7 7 0 1 0 0 14a7 7 0 1 0 0-14z";
const DOT = "M10 7.2a2.8 2.8 0 1 0 0 5.6a2.8 2.8 0 1 0 0-5.6z";
const DIAMOND = "M10 1.5L18.5 10L10 18.5L1.5 10z";
const HALF_DIAMOND = "M10 1.5L1.5 10L10 18.5z";
const SQUARE = "M3 3H17V17H3z";
const OCTAGON = "M6.3 1H13.7L19 6.3V13.7L13.7 19H6.3L1 13.7V6.3z";
const BAR = "M4.5 8.4H15.5V11.6H4.5z";

const shapeOf = (grade: Grade | null) => {
  switch (grade) {
    case null:
      return (
        <>
          <path d={RING} fill="var(--paper)" />
          <path d={RING} fill="url(#hatch-unseen)" stroke="var(--ink3)" strokeWidth="1.3" />
        </>
      );
    case 0:
      return <path d={RING} fill="var(--paper)" stroke="var(--g0)" strokeWidth="1.6" />;
    case 1:
      return (
        <>
          <path d={RING} fill="var(--paper)" stroke="var(--g1)" strokeWidth="1.6" />
          <path d={DOT} fill="var(--g1)" />
        </>
      );
    case 2:
      return (
        <>
          <path d={DIAMOND} fill="var(--paper)" stroke="var(--g2)" strokeWidth="1.6" />
          <path d={HALF_DIAMOND} fill="var(--g2)" />
        </>
      );
    case 3:
      return <path d={SQUARE} fill="var(--g3)" stroke="var(--g3)" strokeWidth="1.6" />;
    case 4:
      return (
        <>
          <path d={OCTAGON} fill="var(--g4)" />
          <path d={BAR} fill="var(--paper)" />
        </>
      );
  }
};

interface GradeShapeProps {
  readonly grade: Grade | null;
  readonly close?: boolean;
  readonly cx: number;
  readonly cy: number;
  readonly size: number;
}

/** The mark of a grade inside a scene; null is "not looked at", close adds the dashed ring of "too close to call". */
export const GradeShape = ({ grade, close = false, cx, cy, size }: GradeShapeProps) => (
  <g transform={`translate(${cx - size / 2} ${cy - size / 2}) scale(${size / 20})`}>
    {shapeOf(grade)}
    {close ? (
      <circle cx="10" cy="10" r="12.5" fill="none" stroke="var(--g1)" strokeWidth="1.4" strokeDasharray="3.4 2.6" />
    ) : null}
  </g>
);

/** The mark of a grade beside words; the words carry the meaning. */
export const GradeMark = ({ grade, size = 18 }: { readonly grade: Grade | null; readonly size?: number }) => (
  <svg viewBox="0 0 20 20" width={size} height={size} aria-hidden="true" className="grade-mark">
    <GradeShape grade={grade} cx={10} cy={10} size={20} />
  </svg>
);
