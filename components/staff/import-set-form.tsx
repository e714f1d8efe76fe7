"use client";

import { Button, FileInput, SegmentedControl, Select, TextInput } from "@mantine/core";
import { useRouter } from "next/navigation";
import { useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { useAction } from "@/components/forms/use-action";
import panel from "@/components/staff/panel.module.css";
import { SetPlanTable } from "@/components/staff/set-plan-table";
import { ErrorNote } from "@/components/ui/error-note";
import { type Fault, isAppError } from "@/lib/base/app-error";
import { parseJson } from "@/lib/exchange/parse-json";
import type { SetImportPlan } from "@/lib/plot/set-import";

interface SetInput {
  readonly json: unknown;
  readonly trayId: string | null;
  readonly trayName: string;
}

export interface ImportSetFormProps {
  /** The sets that come with the program, parsed. */
  library: readonly {
    readonly title: string;
    readonly notes: string;
    readonly stones: number;
    readonly json: unknown;
  }[];
  /** Trays that the viewer may change. */
  trays: readonly { readonly trayId: string; readonly name: string }[];
  /** The tray that the page was opened from. */
  into: string | null;
  plan: (input: SetInput) => Promise<ActionResult<SetImportPlan>>;
  importSet: (
    input: SetInput & { readonly fingerprint: string },
  ) => Promise<ActionResult<{ trayId: string }>>;
}

interface Chosen {
  readonly json: unknown;
  readonly title: string;
}

interface Refusal {
  readonly message: string;
  readonly faults: readonly Fault[];
}

function findTitle(json: unknown): string {
  const title = typeof json === "object" && json !== null && "title" in json ? json.title : "";
  return typeof title === "string" && title.trim() !== "" ? title.trim().slice(0, 200) : "New tray";
}

async function readFile(file: File): Promise<Chosen | Refusal> {
  try {
    const json = parseJson(await file.text());
    return { json, title: findTitle(json) };
  } catch (thrown) {
    if (isAppError(thrown)) return { message: thrown.message, faults: thrown.faults };
    return { message: "The file could not be read.", faults: [] };
  }
}

/** Where the set comes from: a file, or one of ours. */
function SetSource({
  library,
  onChoose,
}: {
  library: ImportSetFormProps["library"];
  onChoose: (set: Chosen | Refusal | null) => void;
}) {
  return (
    <div className={panel.two}>
      <section className={panel.root}>
        <h2>A file</h2>
        <FileInput
          label="Exercise set file"
          description="A .json file in Loupework’s exercise set format"
          placeholder="Choose a file"
          accept="application/json,.json"
          clearable
          clearButtonProps={{ "aria-label": "Take the file away" }}
          onChange={async (file) => onChoose(file === null ? null : await readFile(file))}
        />
      </section>
      <section className={panel.root}>
        <h2>The library</h2>
        {library.map(({ title, notes, stones, json }) => (
          <div key={title} className={panel.offer}>
            <div>
              <h3>
                {title} <span className="muted">{stones} stones</span>
              </h3>
              <p className="muted">{notes}</p>
            </div>
            <Button
              variant="outline"
              size="xs"
              onClick={() => onChoose({ json, title })}
              aria-label={`Choose ${title}`}
            >
              Choose
            </Button>
          </div>
        ))}
      </section>
    </div>
  );
}

/** Brings an exercise set in: what it would do is shown first, then all of it is done or nothing. */
export function ImportSetForm({ library, trays, into, plan, importSet }: ImportSetFormProps) {
  const router = useRouter();
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [target, setTarget] = useState<string | null>(into);
  const [name, setName] = useState("");
  const [shown, setShown] = useState<SetImportPlan | null>(null);
  const planning = useAction(plan);
  const importing = useAction(importSet);

  const work = async (set: Chosen, trayId: string | null, trayName: string) => {
    const done = await planning.run({ json: set.json, trayId, trayName: trayName.trim() || set.title });
    setShown(done?.value ?? null);
  };
  const choose = async (set: Chosen | Refusal | null) => {
    setShown(null);
    setRefusal(set !== null && "message" in set ? set : null);
    const next = set !== null && "json" in set ? set : null;
    setChosen(next);
    importing.clearFailure();
    if (next === null) return;
    setName(next.title);
    await work(next, target, next.title);
  };
  const retarget = async (trayId: string | null) => {
    setTarget(trayId);
    if (chosen !== null) await work(chosen, trayId, name);
  };
  const apply = async () => {
    if (chosen === null || shown === null) return;
    const input = {
      json: chosen.json,
      trayId: target,
      trayName: shown.trayName,
      fingerprint: shown.fingerprint,
    };
    const done = await importing.run(input);
    // Refused: the ground may have changed, so what would happen now is worked out and shown again.
    if (done === null) await work(chosen, target, name);
    else router.push(`/trays/${done.value.trayId}`);
  };

  return (
    <div className="stack">
      <SetSource library={library} onChoose={choose} />
      {refusal !== null && (
        <ErrorNote
          message={refusal.message}
          next="Mend the file where the paths below point, then choose it again."
          faults={refusal.faults}
        />
      )}
      {planning.failure !== null && (
        <ErrorNote
          message={planning.failure.message}
          kept="Nothing was written."
          faults={planning.failure.faults}
        />
      )}
      {chosen !== null && (
        <section className={panel.root}>
          <h2>{chosen.title}</h2>
          <div className={panel.inline}>
            <SegmentedControl
              aria-label="Where its stones go"
              value={target === null ? "new" : "tray"}
              disabled={trays.length === 0}
              data={[
                { value: "new", label: "A new tray" },
                { value: "tray", label: "A tray that there is" },
              ]}
              onChange={(value) => retarget(value === "new" ? null : (into ?? trays[0]?.trayId ?? null))}
            />
            {target === null ? (
              <TextInput
                aria-label="Name of the new tray"
                maxLength={200}
                value={name}
                onChange={(event) => setName(event.currentTarget.value)}
                onBlur={() => work(chosen, null, name)}
              />
            ) : (
              <Select
                aria-label="Tray"
                allowDeselect={false}
                searchable
                data={trays.map((tray) => ({ value: tray.trayId, label: tray.name }))}
                value={target}
                onChange={(value) => retarget(value)}
              />
            )}
          </div>
          {shown !== null && <SetPlanTable plan={shown} />}
          {importing.failure !== null && (
            <ErrorNote
              message={importing.failure.message}
              kept="Nothing was written. Above is what would happen now."
              faults={importing.failure.faults}
            />
          )}
          <div>
            <Button
              loading={planning.pending || importing.pending}
              disabled={shown === null || shown.faults.length > 0}
              onClick={apply}
            >
              {target === null ? "Make the tray" : "Bring the stones in"}
            </Button>
          </div>
        </section>
      )}
    </div>
  );
}
