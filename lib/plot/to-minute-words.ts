/** An instant to the minute as a file or a message of the server can say it: in no reader's time zone, so in UTC. */
export function toMinuteWords(at: Date): string {
  const iso = at.toISOString();
  return `${iso.slice(0, 10)} ${iso.slice(11, 16)} UTC`;
}
