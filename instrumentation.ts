/** Runs once when the server starts, before it answers. A start that is not set up ends with a sentence. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== "nodejs") return;
  const { startServer } = await import("@/lib/workflows/start-server");
  await startServer();
}
