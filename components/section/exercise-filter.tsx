"use client";

import { NativeSelect } from "@mantine/core";
import { usePathname, useRouter } from "next/navigation";

export interface ExerciseFilterProps {
  readonly exercises: readonly { readonly exerciseId: string; readonly title: string }[];
  /** The one that is shown; null for all. */
  readonly shown: string | null;
}

/** Which exercise a report covers: all, or one. It is part of the address, so that it can be kept and sent. */
export function ExerciseFilter({ exercises, shown }: ExerciseFilterProps) {
  const router = useRouter();
  const pathname = usePathname();
  return (
    <NativeSelect
      className="no-print"
      label="Exercise"
      value={shown ?? ""}
      onChange={({ currentTarget: { value } }) =>
        router.push(value === "" ? pathname : `${pathname}?exercise=${value}`)
      }
      data={[
        { value: "", label: "All exercises" },
        ...exercises.map(({ exerciseId, title }) => ({ value: exerciseId, label: title })),
      ]}
    />
  );
}
