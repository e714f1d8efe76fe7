"use client";

import { Button, type ButtonProps } from "@mantine/core";
import Link from "next/link";

export interface LinkButtonProps extends ButtonProps {
  href: string;
}

/** A link that looks like a button, for pages made on the server too, which cannot hand a component to another. */
export function LinkButton({ href, ...button }: LinkButtonProps) {
  return <Button component={Link} href={href} {...button} />;
}
