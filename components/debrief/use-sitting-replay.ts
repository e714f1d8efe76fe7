import { useMemo } from "react";
import { buildReplayLayers } from "@/components/debrief/build-replay-layers";
import { insertNotes, listReplayFrames } from "@/components/debrief/replay-sitting";
import { useReplay } from "@/components/debrief/use-replay";
import { getSolid } from "@/lib/gem/build-solid";
import { findLoggedBursts } from "@/lib/plot/find-dotting";
import type { DebriefView } from "@/lib/plot/student-view";

/** The sitting played back: its frames, where it dotted, and the plot at the moment that is shown. */
export function useSittingReplay(view: DebriefView) {
  const { stone, events, notes, openedAt, dotting, characteristics } = view;
  const solid = useMemo(() => getSolid(stone.cut, stone.proportions), [stone.cut, stone.proportions]);
  const frames = useMemo(
    () => insertNotes(listReplayFrames(events, solid), notes, openedAt),
    [events, solid, notes, openedAt],
  );
  const bursts = useMemo(() => findLoggedBursts(events, dotting), [events, dotting]);
  const replay = useReplay(frames);
  const marks = replay.done === 0 ? undefined : frames[replay.done - 1]?.marks;
  const layers = useMemo(
    () => buildReplayLayers(marks ?? [], characteristics, solid),
    [marks, characteristics, solid],
  );
  return { replay, bursts, layers };
}
