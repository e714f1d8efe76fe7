/** A fault's message as a sentence of its own: with a capital to begin. An empty text stays empty. */
export function toSentence(message: string): string {
  return message.charAt(0).toUpperCase() + message.slice(1);
}
