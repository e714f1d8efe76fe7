/** What is left of a timed stone, in words. Pure. */

/** "12:05 left", with hours where there are any; full seconds, the one that has begun counted whole. */
export function toTimeLeftWords(leftMs: number): string {
  if (leftMs <= 0) return "Time is up";
  const seconds = Math.ceil(leftMs / 1000);
  const [hours, minutes, rest] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  const two = (value: number) => String(value).padStart(2, "0");
  return hours > 0 ? `${hours}:${two(minutes)}:${two(rest)} left` : `${minutes}:${two(rest)} left`;
}

/** What is said aloud, and changes only when there is something to say, true also of a stone opened late; null while there is ample time. */
export function toTimeWarning(leftMs: number): string | null {
  if (leftMs <= 0) return "The time is up. Everything you did is being handed in.";
  if (leftMs <= 60_000) return "A minute or less is left for this stone.";
  return leftMs <= 300_000 ? "Five minutes or less are left for this stone." : null;
}
