"use client";

import { Button, Menu } from "@mantine/core";
import { ChevronDown, Download } from "lucide-react";

/** The section as files for a gradebook, for a statistician and for a school's own system. */
export function SectionExports({ sectionId }: { sectionId: string }) {
  const item = (file: string, words: string) => (
    <Menu.Item component="a" href={`/api/sections/${sectionId}/${file}`} download>
      {words}
    </Menu.Item>
  );
  return (
    <Menu position="bottom-end" shadow="md" width={300}>
      <Menu.Target>
        <Button
          variant="outline"
          leftSection={<Download size={16} aria-hidden="true" />}
          rightSection={<ChevronDown size={15} aria-hidden="true" />}
        >
          Export
        </Button>
      </Menu.Target>
      <Menu.Dropdown>
        {item("gradebook.csv", "Gradebook: points by exercise (CSV)")}
        {item("items.csv", "Every reference mark, found or not (CSV)")}
        {item("oneroster.zip", "OneRoster 1.2 line items and results (ZIP)")}
      </Menu.Dropdown>
    </Menu>
  );
}
