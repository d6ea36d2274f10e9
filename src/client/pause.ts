/** Lets the browser do what waits, a tap or a paint, before the work goes on. */
export function pause(): Promise<void> {
  return new Promise((goOn) => {
    setTimeout(goOn);
  });
}
