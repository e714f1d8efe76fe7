"use client";

import { Button, type ButtonProps, Menu } from "@mantine/core";
import { FileDown } from "lucide-react";
import { PAPER_LABELS, PAPER_SIZES } from "@/components/paper/paper-size";

export interface PaperMenuProps extends ButtonProps {
  label: string;
  /** Of the PDF; the paper is added as `?paper=`. */
  address: string;
  /** What else the address says. */
  query?: Readonly<Record<string, string>>;
}

/** A PDF to be had on either paper. */
export function PaperMenu({ label, address, query = {}, ...button }: PaperMenuProps) {
  return (
    <Menu position="bottom-end" withinPortal>
      <Menu.Target>
        <Button variant="outline" leftSection={<FileDown size={16} aria-hidden="true" />} {...button}>
          {label}
        </Button>
      </Menu.Target>
      <Menu.Dropdown>
        {PAPER_SIZES.map((size) => (
          <Menu.Item
            key={size}
            component="a"
            href={`${address}?${new URLSearchParams({ ...query, paper: size })}`}
            target="_blank"
            rel="noopener"
          >
            PDF, {PAPER_LABELS[size]}
          </Menu.Item>
        ))}
      </Menu.Dropdown>
    </Menu>
  );
}
