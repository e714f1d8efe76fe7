/** When a stone of an exercise opens, where it has an opening of its own. Pure. */

/** The instant from which a stone may be begun while that lies ahead; null for one that opens with its exercise, and once it has. */
export function findStoneOpening(stone: { readonly opensAt: Date | null }, now: Date): Date | null {
  return stone.opensAt !== null && stone.opensAt > now ? stone.opensAt : null;
}
