/** A whole number of minutes in words. */
export function toMinutes(minutes: number): string {
  return minutes === 1 ? "1 minute" : `${minutes} minutes`;
}
