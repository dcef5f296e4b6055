import type { ReactNode } from "react";

/** Millimetres about the middle of the axle, front up: both wheels and what carries them, as seen from below. */
const VIEW = "-910 -560 1820 1000";

const Wheels = () => (
  <>
    {[-775, 775].map((y) => (
      <rect key={y} x={y - 100} y={-315} width={200} height={630} rx={70} />
    ))}
  </>
);

/** Two arms to the wheels and the beam between them that twists: bushes ahead, springs beside the beam. */
const TwistBeam = () => (
  <>
    <path d="M-520 -470 L-560 -230 L-660 0 M520 -470 L560 -230 L660 0" strokeWidth={70} />
    <path d="M-545 -190 L545 -190" strokeWidth={110} />
    <circle cx={-520} cy={-470} r={60} />
    <circle cx={520} cy={-470} r={60} />
    <circle cx={-470} cy={20} r={95} />
    <circle cx={470} cy={20} r={95} />
  </>
);

/** One tube from wheel to wheel with leaf springs along the car under it; `driven` has the final drive in it. */
const LiveAxle = ({ driven }: { readonly driven: boolean }) => (
  <>
    <path d="M-675 0 L675 0" strokeWidth={90} />
    {driven ? <circle cx={60} cy={0} r={170} /> : null}
    {[-480, 480].map((y) => (
      <path key={y} d={`M${y} -540 L${y} 420`} strokeWidth={60} />
    ))}
  </>
);

/** Axles people meet for which there is no template yet, with how they look from below. */
const NOT_OFFERED: readonly { readonly name: string; readonly drawing: ReactNode }[] = [
  { name: "rear twist beam", drawing: <TwistBeam /> },
  { name: "rear live axle", drawing: <LiveAxle driven /> },
  { name: "front live axle", drawing: <LiveAxle driven={false} /> },
];

/** Silhouettes that cannot be chosen yet, so that nobody takes another one for them, and what to do about such a car. */
export const NotOffered = () => (
  <section className="not-offered" aria-labelledby="not-offered-head">
    <h2 id="not-offered-head">Not offered yet</h2>
    <div className="not-offered-row">
      {NOT_OFFERED.map(({ name, drawing }) => (
        <div key={name} className="not-offered-axle">
          <svg viewBox={VIEW} className="silhouette" aria-hidden="true">
            <Wheels />
            {drawing}
          </svg>
          <span>{name}</span>
        </div>
      ))}
    </div>
    <p className="note">
      Does an axle look like one of these? Begin for the other one and leave this one untapped: an assumed layout stands
      in for it, and every page and paper of this axle says that none of it holds.
    </p>
  </section>
);
