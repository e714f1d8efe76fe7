/**
 * The command line (design.md): `npm run --silent cli -- COMMAND …` prints JSON on standard output and nothing else.
 * A refusal goes to standard error with exit status 2, and then nothing was written.
 */
import { runCommandLine } from "@/lib/cli/run-command-line";

/** Writes to a stream and waits until it is taken; a reader that has gone away is no fault of ours. */
function write(stream: NodeJS.WriteStream, text: string): Promise<void> {
  if (text === "") return Promise.resolve();
  return new Promise((done, fail) => {
    stream.once("error", (error) => ("code" in error && error.code === "EPIPE" ? done() : fail(error)));
    stream.write(text, () => done());
  });
}

const { status, stdout, stderr } = await runCommandLine(process.argv.slice(2));
await write(process.stderr, stderr);
await write(process.stdout, stdout);
process.exitCode = status;
