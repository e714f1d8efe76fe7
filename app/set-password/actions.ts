"use server";

import { headers } from "next/headers";
import { z } from "zod";
import { type ActionResult, toActionResult } from "@/components/forms/action-result";
import { readEnvironment } from "@/lib/data/read-environment";
import type { LinkHolder } from "@/lib/plot/access-link";
import { findClientAddress } from "@/lib/workflows/find-client-address";
import { readAccessLink, redeemAccessLink } from "@/lib/workflows/redeem-access-link";

const TokenSchema = z.string().max(200);
const InputSchema = z.strictObject({ token: TokenSchema, password: z.string() });

async function findAddress(): Promise<string> {
  return findClientAddress(Object.fromEntries(await headers()), readEnvironment().proxies);
}

/** Says whose password a link sets. Nobody need be signed in: the token is what lets in. */
export async function readLinkAction(token: unknown): Promise<ActionResult<LinkHolder>> {
  return toActionResult(async () => readAccessLink(TokenSchema.parse(token), await findAddress()));
}

/** Sets the password of whoever the link was made for, once. */
export async function redeemLinkAction(input: unknown): Promise<ActionResult<{ login: string }>> {
  return toActionResult(async () => redeemAccessLink(InputSchema.parse(input), await findAddress()));
}
