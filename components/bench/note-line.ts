/**
 * What a bench hears from staff, and what it says of itself: that it is open, hidden or left. The notes come by a
 * stream of the student's own sitting; where that does not come through, with the answers to what the bench says,
 * which it then says more often. No React.
 */
import { LiveStream, type StreamSource } from "@/components/live/live-stream";
import { type StudentNote, StudentNotesSchema } from "@/lib/plot/bench-note";

export type BenchPresence = "here" | "away" | "gone";

export interface NoteLineParts {
  readonly openSource: () => StreamSource;
  /** Says how the bench is; gives the answer, or null when there was none. */
  readonly say: (presence: BenchPresence) => Promise<unknown>;
  readonly saySeen: (noteId: string) => Promise<boolean>;
  readonly isVisible: () => boolean;
}

/** Between two beats of a bench, ms, while its stream comes through and while it does not. */
export const BEAT_MS = 20_000;
export const ASK_MS = 4000;

export class NoteLine {
  private notes: readonly StudentNote[] = [];
  private readonly known = new Set<string>();
  private readonly unseen = new Set<string>();
  private isLive = false;
  private timer: ReturnType<typeof setTimeout> | null = null;
  private isStopped = true;
  private readonly stream: LiveStream;
  private readonly listeners = new Set<() => void>();

  constructor(private readonly parts: NoteLineParts) {
    this.stream = new LiveStream({
      openSource: parts.openSource,
      names: ["notes"],
      hear: (_name, data) => this.take(data),
      setLive: (isLive) => {
        this.isLive = isLive;
        if (!this.isStopped) this.beatLater();
      },
      end: () => this.stop(),
    });
  }

  readonly getNotes = (): readonly StudentNote[] => this.notes;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  readonly start = (): void => {
    this.isStopped = false;
    this.stream.start();
    void this.beat();
  };

  /** The page is shown or hidden: said at once, and what is shown now counts as seen. */
  readonly heedVisibility = (): void => {
    void this.beat();
    void this.markSeen();
  };

  readonly leave = (): void => void this.parts.say("gone");

  readonly stop = (): void => {
    this.isStopped = true;
    this.stream.stop();
    if (this.timer !== null) clearTimeout(this.timer);
  };

  readonly dismiss = (noteId: string): void => this.set(this.notes.filter((note) => note.noteId !== noteId));

  private set(notes: readonly StudentNote[]): void {
    this.notes = notes;
    for (const listener of this.listeners) listener();
  }

  private take(data: unknown): void {
    const heard = StudentNotesSchema.safeParse(data);
    if (!heard.success) return;
    const fresh = heard.data.notes.filter(({ noteId }) => !this.known.has(noteId));
    if (fresh.length > 0) {
      for (const { noteId } of fresh) {
        this.known.add(noteId);
        this.unseen.add(noteId);
      }
      this.set([...this.notes, ...fresh]);
    }
    void this.markSeen();
  }

  /** A note counts as seen once a page that is looked at shows it. Said again until it is kept. */
  private async markSeen(): Promise<void> {
    if (!this.parts.isVisible()) return;
    for (const noteId of [...this.unseen]) {
      this.unseen.delete(noteId);
      if (!(await this.parts.saySeen(noteId))) this.unseen.add(noteId);
    }
  }

  private beatLater(): void {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.beat(), this.isLive ? BEAT_MS : ASK_MS);
  }

  private async beat(): Promise<void> {
    const answer = await this.parts.say(this.parts.isVisible() ? "here" : "away");
    if (this.isStopped) return;
    if (answer !== null) this.take(answer);
    this.beatLater();
  }
}
