/** Every route of app/api that answers JSON: how it is called on the first section's things, and what each may expect. */
import * as plots from "@/app/api/exercises/[exerciseId]/plots.json/route";
import * as set from "@/app/api/exercises/[exerciseId]/set.json/route";
import * as worksheets from "@/app/api/exercises/[exerciseId]/worksheets.pdf/route";
import * as personData from "@/app/api/people/[userId]/data.json/route";
import * as photo from "@/app/api/photos/[photoId]/[size]/route";
import * as gradebook from "@/app/api/sections/[sectionId]/gradebook.csv/route";
import * as items from "@/app/api/sections/[sectionId]/items.csv/route";
import * as oneRoster from "@/app/api/sections/[sectionId]/oneroster.zip/route";
import * as sectionReport from "@/app/api/sections/[sectionId]/report.pdf/route";
import * as claim from "@/app/api/sittings/[sittingId]/claim/route";
import * as debrief from "@/app/api/sittings/[sittingId]/debrief.pdf/route";
import * as events from "@/app/api/sittings/[sittingId]/events/route";
import * as handIn from "@/app/api/sittings/[sittingId]/hand-in/route";
import * as seen from "@/app/api/sittings/[sittingId]/notes/seen/route";
import * as notes from "@/app/api/sittings/[sittingId]/notes/stream/route";
import * as presence from "@/app/api/sittings/[sittingId]/presence/route";
import * as review from "@/app/api/sittings/[sittingId]/review/route";
import * as sittingWatch from "@/app/api/sittings/[sittingId]/watch/route";
import * as addPhoto from "@/app/api/stones/[stoneId]/photos/route";
import * as traySet from "@/app/api/trays/[trayId]/set.json/route";
import * as trayWorksheets from "@/app/api/trays/[trayId]/worksheets.pdf/route";
import * as watch from "@/app/api/watch/route";
import * as watchStream from "@/app/api/watch/stream/route";
import type { Caller } from "@/tests/access/access-case";
import { makePicture } from "@/tests/support/make-picture";
import { type School, WRITER } from "@/tests/support/school";
import { makeMark } from "@/tests/support/school-marks";

/** The status for each caller. */
type Statuses = Readonly<Record<Caller, number>>;

export interface RouteCase {
  readonly statuses: Statuses;
  readonly call: (school: School) => Promise<Response>;
}

const statuses = (row: readonly [number, number, number, number, number, number]): Statuses => {
  const [director, iris, otto, ada, ben, cyd] = row;
  return { director, iris, otto, ada, ben, cyd };
};
const owner = statuses([403, 403, 403, 200, 404, 404]);
const teaching = statuses([200, 200, 404, 404, 404, 404]);
const staff = statuses([200, 200, 200, 404, 404, 404]);

const HOST = "loupework.test";

/** A request as the program's own page sends it. */
export function makePost(body: unknown, headers: Record<string, string> = {}): Request {
  return new Request(`http://${HOST}/`, {
    method: "POST",
    headers: { host: HOST, origin: `http://${HOST}`, "content-type": "application/json", ...headers },
    body: typeof body === "string" ? body : JSON.stringify(body),
  });
}

/** A file as the program's own page sends it. */
export function makeUpload(bytes: Uint8Array, headers: Record<string, string> = {}): Request {
  return new Request(`http://${HOST}/`, {
    method: "POST",
    headers: {
      host: HOST,
      origin: `http://${HOST}`,
      "content-type": "application/octet-stream",
      ...headers,
    },
    body: new Uint8Array(bytes),
  });
}

const get = () => new Request(`http://${HOST}/`, { headers: { host: HOST } });
const sitting = (sittingId: string) => ({ params: Promise.resolve({ sittingId }) });
const section = (sectionId: string) => ({ params: Promise.resolve({ sectionId }) });
const exercise = (exerciseId: string) => ({ params: Promise.resolve({ exerciseId }) });

/** Lets go of a stream, as a browser does; a refusal is left to be read. */
async function endStream(response: Response): Promise<Response> {
  if (response.status === 200) await response.body?.cancel();
  return response;
}

export const ROUTE_CASES: Readonly<Record<string, RouteCase>> = {
  "POST sittings/[sittingId]/events": {
    statuses: owner,
    call: ({ adaOnBench }) =>
      events.POST(
        makePost({
          writerId: WRITER,
          events: [{ seq: 3, atMs: 9000, kind: "marks", put: [makeMark("m2", 0.1)], removed: [] }],
        }),
        sitting(adaOnBench),
      ),
  },
  "POST sittings/[sittingId]/claim": {
    statuses: owner,
    call: ({ adaOnBench }) => claim.POST(makePost({ writerId: WRITER, takeOver: true }), sitting(adaOnBench)),
  },
  "POST sittings/[sittingId]/hand-in": {
    statuses: owner,
    call: ({ adaOnBench }) => handIn.POST(makePost({ writerId: WRITER, lastSeq: 2 }), sitting(adaOnBench)),
  },
  "POST sittings/[sittingId]/notes/seen": {
    statuses: owner,
    call: ({ adaOnBench, adaNote }) => seen.POST(makePost({ noteId: adaNote }), sitting(adaOnBench)),
  },
  "GET sittings/[sittingId]/notes/stream": {
    statuses: owner,
    call: async ({ adaOnBench }) => endStream(await notes.GET(get(), sitting(adaOnBench))),
  },
  "POST sittings/[sittingId]/presence": {
    statuses: owner,
    call: ({ adaOnBench }) => presence.POST(makePost({ presence: "here" }), sitting(adaOnBench)),
  },
  "GET sittings/[sittingId]/watch": {
    statuses: teaching,
    call: ({ adaOnBench }) => sittingWatch.GET(get(), sitting(adaOnBench)),
  },
  "GET sittings/[sittingId]/review": {
    statuses: teaching,
    call: ({ adaScored }) => review.GET(get(), sitting(adaScored)),
  },
  "GET watch": { statuses: staff, call: () => watch.GET() },
  "GET watch/stream": { statuses: staff, call: async () => endStream(await watchStream.GET(get())) },
  "GET exercises/[exerciseId]/set.json": {
    statuses: teaching,
    call: ({ exerciseId }) => set.GET(get(), exercise(exerciseId)),
  },
  "GET trays/[trayId]/set.json": {
    // Otto reads a stone of it blind.
    statuses: statuses([200, 200, 403, 404, 404, 404]),
    call: ({ trayId }) => traySet.GET(get(), { params: Promise.resolve({ trayId }) }),
  },
  "GET people/[userId]/data.json": {
    statuses: statuses([200, 404, 404, 200, 404, 404]),
    call: ({ ada }) => personData.GET(get(), { params: Promise.resolve({ userId: ada.userId }) }),
  },
  "GET exercises/[exerciseId]/plots.json": {
    statuses: teaching,
    call: ({ exerciseId }) => plots.GET(get(), exercise(exerciseId)),
  },
  "GET sections/[sectionId]/gradebook.csv": {
    statuses: teaching,
    call: ({ sectionId }) => gradebook.GET(get(), section(sectionId)),
  },
  "GET sections/[sectionId]/items.csv": {
    statuses: teaching,
    call: ({ sectionId }) => items.GET(get(), section(sectionId)),
  },
  "GET sections/[sectionId]/report.pdf": {
    statuses: teaching,
    call: ({ sectionId }) => sectionReport.GET(get(), section(sectionId)),
  },
  "GET sections/[sectionId]/oneroster.zip": {
    statuses: teaching,
    call: ({ sectionId }) => oneRoster.GET(get(), section(sectionId)),
  },
  "POST stones/[stoneId]/photos": {
    statuses: teaching,
    call: async ({ stoneIds }) =>
      addPhoto.POST(makeUpload(await makePicture()), {
        params: Promise.resolve({ stoneId: stoneIds[0] }),
      }),
  },
  // The photograph is not shown to students.
  "GET photos/[photoId]/[size]": {
    statuses: statuses([200, 200, 200, 404, 404, 404]),
    call: ({ photoId }) => photo.GET(get(), { params: Promise.resolve({ photoId, size: "small" }) }),
  },
  "GET trays/[trayId]/worksheets.pdf": {
    statuses: statuses([200, 200, 200, 404, 404, 404]),
    call: ({ trayId }) => trayWorksheets.GET(get(), { params: Promise.resolve({ trayId }) }),
  },
  "GET exercises/[exerciseId]/worksheets.pdf": {
    statuses: statuses([200, 200, 404, 200, 200, 404]),
    call: ({ exerciseId }) => worksheets.GET(get(), exercise(exerciseId)),
  },
  // Scored and not released, as the debrief's page: its student is told that there is none.
  "GET sittings/[sittingId]/debrief.pdf": {
    statuses: teaching,
    call: ({ adaScored }) => debrief.GET(get(), sitting(adaScored)),
  },
};

/** Routes that are walked elsewhere. */
export const OTHER_ROUTES: Readonly<Record<string, string>> = {
  "GET auth/[...nextauth]": "sign-in itself (tests/integration/sign-in.test.ts)",
  "POST auth/[...nextauth]": "sign-in itself (tests/integration/sign-in.test.ts)",
};
