/** Whether a review was changed since the grid was read: going back in the browser shows the grid as it was kept. */
let isReviewed = false;

export function noteReviewed(): void {
  isReviewed = true;
}

/** Says so once. */
export function takeReviewed(): boolean {
  const was = isReviewed;
  isReviewed = false;
  return was;
}
