"use client";

import { Button } from "@mantine/core";
import { Printer } from "lucide-react";
import QRCode from "qrcode";
import { useState } from "react";
import classes from "@/components/staff/link-sheet.module.css";
import { When } from "@/components/ui/when";
import type { MadeLink } from "@/lib/plot/access-link";

/** The token stands behind the #: a browser keeps that part to itself, so that no log on the way has it. */
const toAddress = ({ token }: MadeLink) => `${window.location.origin}/set-password#${token}`;

const QUIET = 2;

function LinkCode({ text }: { text: string }) {
  const { modules } = QRCode.create(text, { errorCorrectionLevel: "M" });
  const size = modules.size + 2 * QUIET;
  const path = Array.from(modules.data).flatMap((bit, at) =>
    bit === 1 ? [`M${(at % modules.size) + QUIET} ${Math.floor(at / modules.size) + QUIET}h1v1h-1z`] : [],
  );
  return (
    <svg
      className={classes.code}
      viewBox={`0 0 ${size} ${size}`}
      aria-hidden="true"
      shapeRendering="crispEdges"
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={path.join("")} fill="#000" />
    </svg>
  );
}

function CopyButton({ text, name }: { text: string; name: string }) {
  const [copied, setCopied] = useState(false);
  const copy = async () => {
    await navigator.clipboard.writeText(text);
    setCopied(true);
  };
  return (
    <Button
      size="xs"
      variant="outline"
      className="no-print"
      onClick={copy}
      aria-label={`Copy the link of ${name}`}
    >
      {copied ? "Copied" : "Copy the link"}
    </Button>
  );
}

/** One-time links as slips to be copied or printed and cut apart; they are shown this once. */
export function LinkSheet({ links }: { links: readonly MadeLink[] }) {
  return (
    <div className={classes.root}>
      <div className={`${classes.head} no-print`}>
        <p role="status">
          {links.length === 1 ? "The link is made." : `${links.length} links are made.`} Copy or print now:
          they are shown this once and kept nowhere. A newer link for the same person ends the older one.
        </p>
        <Button
          variant="outline"
          leftSection={<Printer size={16} aria-hidden="true" />}
          onClick={() => window.print()}
        >
          Print
        </Button>
      </div>
      <ul className={classes.slips}>
        {links.map((link) => (
          <li key={link.userId} className={classes.slip}>
            <LinkCode text={toAddress(link)} />
            <div className={classes.words}>
              <strong>{link.name}</strong>
              <span>Sign-in name: {link.login}</span>
              <span className={classes.address}>{toAddress(link)}</span>
              <span className="muted">
                {link.kind === "invitation" ? "Opens your account" : "Sets a new password"}, once, until{" "}
                <When iso={link.expiresAt} />
              </span>
              <CopyButton text={toAddress(link)} name={link.name} />
            </div>
          </li>
        ))}
      </ul>
    </div>
  );
}
