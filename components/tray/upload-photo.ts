import { MOST_PHOTO_BYTES } from "@/lib/plot/stone-photo";

/** Sends one photograph; gives why it was not kept, or null. */
export async function uploadPhoto(stoneId: string, file: File): Promise<string | null> {
  if (file.size > MOST_PHOTO_BYTES) return `${file.name} is larger than ${MOST_PHOTO_BYTES / 1_000_000} MB.`;
  try {
    const answer = await fetch(`/api/stones/${stoneId}/photos`, {
      method: "POST",
      headers: { "Content-Type": "application/octet-stream" },
      body: file,
    });
    if (answer.ok) return null;
    const { message, faults } = (await answer.json()) as {
      message: string;
      faults: readonly { message: string }[];
    };
    const [fault] = faults;
    return fault === undefined
      ? `${file.name}: ${message}`
      : `${file.name} was not kept: it ${fault.message}.`;
  } catch {
    return `${file.name} did not reach the server, so it was not kept. Try again.`;
  }
}
