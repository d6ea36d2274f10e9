/** The id of the source entry of a bench session. */
export function benchSourceId(sessionId: string): string {
  return `bench-${sessionId}`;
}
