import NextAuth from "next-auth";
import { readEnvironment } from "@/lib/data/read-environment";
import { buildAuthOptions } from "@/lib/workflows/build-auth-options";

type Context = { params: Promise<{ nextauth: string[] }> };

/** Signing in and out, by next-auth. The address that it leads back to is the one that is set, else the one visited. */
async function handle(request: Request, context: Context): Promise<Response> {
  const { url } = readEnvironment();
  if (url?.startsWith("https:")) process.env.NEXTAUTH_URL = url;
  else process.env.AUTH_TRUST_HOST = "1";
  return NextAuth(buildAuthOptions())(request, context);
}

export { handle as GET, handle as POST };
