"use client";

import { Button, Group } from "@mantine/core";
import type { ReactNode } from "react";
import classes from "@/components/bench/save-notice.module.css";
import type { SaveState } from "@/components/bench/save-state";
import type { Saving } from "@/components/bench/use-save-client";
import { ErrorNote } from "@/components/ui/error-note";

const toCount = (count: number) => (count === 1 ? "1 change" : `${count} changes`);

function Notice({ title, children, action }: { title: string; children: ReactNode; action?: ReactNode }) {
  return (
    <div className={classes.root} role="status">
      <div>
        <p className={classes.title}>{title}</p>
        <p>{children}</p>
      </div>
      {action !== undefined && <Group gap="sm">{action}</Group>}
    </div>
  );
}

/** Reads the page afresh, which then shows the sitting as the server has it. */
function SeeButton() {
  return (
    <Button size="sm" variant="outline" onClick={() => window.location.reload()}>
      See how it stands
    </Button>
  );
}

function DecideNotice({ state, client }: { state: SaveState; client: Saving["client"] }) {
  const count = toCount(state.stranded.length);
  return (
    <Notice
      title={`${count} made here could not be saved at the time`}
      action={
        <>
          <Button size="sm" onClick={() => client?.addStranded()}>
            Add them on top
          </Button>
          <Button size="sm" variant="outline" color="red" onClick={() => client?.dropStranded()}>
            Leave them out
          </Button>
        </>
      }
    >
      The plot was changed elsewhere meanwhile. Nothing is lost: say what becomes of them before you go on.
    </Notice>
  );
}

function ElsewhereNotice({ state, takeOver }: { state: SaveState; takeOver: Saving["takeOver"] }) {
  return (
    <Notice
      title="This plot is being written in another tab or on another device"
      action={
        <Button size="sm" onClick={() => takeOver()}>
          Write here instead
        </Button>
      }
    >
      {state.stranded.length > 0
        ? `${toCount(state.stranded.length)} made here had not been saved; they are kept, and you can add them once you write here again.`
        : "You can look on here. The other one turns read-only when you write here instead."}
    </Notice>
  );
}

function NoRoomNotice({ state, client }: { state: SaveState; client: Saving["client"] }) {
  const count = toCount(state.unsavedCount);
  return (
    <ErrorNote
      message={state.refusal?.message ?? ""}
      kept={
        state.canKeep
          ? `${count} kept in this browser and saved as soon as there is room; what was saved before is safe. Tell your instructor.`
          : `Keep this page open: ${count} wait here, and this browser keeps nothing over a reload. Tell your instructor.`
      }
      action={
        <Button size="sm" variant="outline" onClick={() => client?.retryNow()}>
          Try now
        </Button>
      }
    />
  );
}

/** What the one word of the status needs said with it, and what can be done about it. Nothing while all is well. */
export function SaveNotice({ saving }: { saving: Saving }) {
  const { state, client, takeOver } = saving;
  if (state.mustDecide) return <DecideNotice state={state} client={client} />;
  if (state.word === "elsewhere") return <ElsewhereNotice state={state} takeOver={takeOver} />;
  if (state.word === "handed-in") {
    return (
      <Notice title="Handed in" action={<SeeButton />}>
        Your instructor has it, with everything you did.
      </Notice>
    );
  }
  if (state.word === "closed") {
    return (
      <Notice title="This sitting takes no more work" action={<SeeButton />}>
        {state.refusal?.message ?? "Everything that was saved is kept."}
        {state.stranded.length > 0 && ` ${toCount(state.stranded.length)} came too late to be saved.`}
      </Notice>
    );
  }
  if (state.word === "offline") {
    return (
      <Notice
        title="The server cannot be reached"
        action={
          <Button size="sm" variant="outline" onClick={() => client?.retryNow()}>
            Try now
          </Button>
        }
      >
        {state.canKeep
          ? `Go on plotting: ${toCount(state.unsavedCount)} kept in this browser, saved as soon as the server answers.`
          : `Keep this page open: ${toCount(state.unsavedCount)} wait here, and this browser keeps nothing over a reload.`}
      </Notice>
    );
  }
  if (state.word === "unsaved" && state.refusal !== null) {
    const isSignedOut = state.refusal.code === "signed-out";
    if (state.refusal.code === "no-room") return <NoRoomNotice state={state} client={client} />;
    return (
      <ErrorNote
        message={state.refusal.message}
        kept={`${toCount(state.unsavedCount + state.stranded.length)} not saved yet; nothing that was saved is lost.`}
        faults={state.refusal.faults}
        action={
          isSignedOut ? (
            <Button size="sm" component="a" href="/sign-in" target="_blank">
              Sign in again in a new tab
            </Button>
          ) : (
            <Button
              size="sm"
              variant="outline"
              onClick={async () => {
                await client?.dropStranded();
                window.location.reload();
              }}
            >
              Leave them out and go on
            </Button>
          )
        }
      />
    );
  }
  if (!state.canKeep) {
    return (
      <Notice title="This browser keeps nothing over a reload">
        Each change is saved on the server as you make it. Before you leave, wait until it says Saved.
      </Notice>
    );
  }
  return null;
}
