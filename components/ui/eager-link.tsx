"use client";

import Link from "next/link";
import { type ComponentProps, useEffect, useRef, useState } from "react";

/** Pointed at for so long, a link is meant and not passed over. */
const MEANT_MS = 40;

export interface EagerLinkProps extends Omit<ComponentProps<typeof Link>, "prefetch"> {
  /** Fetches the page at once, for the one link that is likely to come first. */
  isLikely?: boolean;
}

/**
 * A link whose whole page is fetched once it is pointed at, so that it stands there by the time it is pressed. The page
 * may be shown minutes after it was fetched: it must look for itself whether it still holds.
 */
export function EagerLink({ isLikely = false, ...link }: EagerLinkProps) {
  const [isMeant, setMeant] = useState(false);
  const timer = useRef<number | undefined>(undefined);
  const point = () => {
    timer.current ??= window.setTimeout(() => setMeant(true), MEANT_MS);
  };
  const leave = () => {
    window.clearTimeout(timer.current);
    timer.current = undefined;
  };
  useEffect(() => () => window.clearTimeout(timer.current), []);
  return (
    <Link
      {...link}
      prefetch={isLikely || isMeant ? true : null}
      onPointerEnter={point}
      onPointerLeave={leave}
      onFocus={point}
      onBlur={leave}
    />
  );
}
