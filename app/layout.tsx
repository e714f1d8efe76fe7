import { ColorSchemeScript, mantineHtmlProps } from "@mantine/core";
import type { Metadata, Viewport } from "next";
import localFont from "next/font/local";
import { headers } from "next/headers";
import type { ReactNode } from "react";
import "@mantine/core/styles.layer.css";
import "@mantine/notifications/styles.layer.css";
import "./globals.css";
import { Providers } from "@/app/providers";

/** The letters of nearly every page, fetched with the page itself, so that no line moves when they come. */
const typeface = localFont({
  src: "../node_modules/@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2",
  weight: "200 800",
  declarations: [{ prop: "font-family", value: "'Atkinson Hyperlegible Next Variable'" }],
  adjustFontFallback: "Arial",
});

export const metadata: Metadata = {
  title: { default: "Loupework", template: "%s · Loupework" },
  description: "A classroom for clarity plotting",
};

export const viewport: Viewport = {
  width: "device-width",
  initialScale: 1,
  themeColor: [
    { media: "(prefers-color-scheme: light)", color: "#f3f5f6" },
    { media: "(prefers-color-scheme: dark)", color: "#0d1012" },
  ],
};

/** The nonce without which no script runs on this page (proxy.ts). */
async function readNonce(): Promise<string> {
  return /'nonce-([^']+)'/.exec((await headers()).get("content-security-policy") ?? "")?.[1] ?? "";
}

export default async function RootLayout({ children }: { children: ReactNode }) {
  const nonce = await readNonce();
  return (
    <html lang="en-GB" className={typeface.className} {...mantineHtmlProps}>
      <head>
        <ColorSchemeScript defaultColorScheme="auto" nonce={nonce} />
      </head>
      <body>
        <Providers>{children}</Providers>
      </body>
    </html>
  );
}
