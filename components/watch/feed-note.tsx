import { Radio, RefreshCw, WifiOff } from "lucide-react";
import Link from "next/link";
import classes from "@/components/watch/watch-board.module.css";
import type { FeedMode } from "@/components/watch/watch-feed";

/** How fresh the watch is, in a few words that are true. */
export function FeedNote({ mode }: { mode: FeedMode }) {
  return (
    <p className={classes.feed} data-mode={mode} role="status" data-testid="feed-mode">
      {mode === "stream" && (
        <>
          <Radio size={16} aria-hidden="true" /> Live: changes show at once
        </>
      )}
      {mode === "opening" && "Opening…"}
      {mode === "asking" && (
        <>
          <RefreshCw size={16} aria-hidden="true" /> Asked every two seconds: the live line does not come
          through
        </>
      )}
      {mode === "lost" && (
        <>
          <WifiOff size={16} aria-hidden="true" /> Not connected. What you see stands still; it goes on by
          itself.
        </>
      )}
      {mode === "ended" && (
        <>
          <WifiOff size={16} aria-hidden="true" />{" "}
          <span>
            Your session is over, so what you see stands still. <Link href="/sign-in">Sign in</Link> to go on.
          </span>
        </>
      )}
    </p>
  );
}
