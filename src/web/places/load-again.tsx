/** Loads the page anew; what was typed on this device is kept through it. */
export const LoadAgain = () => (
  <button type="button" className="link" onClick={() => window.location.reload()}>
    Load the page again
  </button>
);
