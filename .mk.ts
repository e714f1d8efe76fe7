process.env.DATABASE_URL = "file:/tmp/eng/demo.db"; process.env.LOUPEWORK_SECRET = "0123456789abcdef0123456789abcdef0123";
async function main() {
  const { getDatabase } = await import("@/lib/data/store/database"); const { createExercise } = await import("@/lib/workflows/create-exercise");
  const db = getDatabase(); const i = await db.user.findFirstOrThrow({ where: { login: "instructor" } });
  const st = await db.user.findFirstOrThrow({ where: { login: "student11" }, include: { enrolments: true } as any }) as any;
  const stones = await db.stone.findMany({ where: { label: { startsWith: "C-" } }, take: 3 });
  const at = (d: number) => new Date(Date.now() + d * 86400000).toISOString();
  const r = await createExercise({ userId: i.id, role: "instructor", name: i.name } as any, { sectionId: st.enrolments[0].sectionId, title: "Against the clock", notes: "", opensAt: at(-0.1), dueAt: at(1), closesAt: at(2), rules: JSON.parse(process.argv[2]), stoneIds: stones.map((s) => s.id) } as any);
  console.log(r, stones.map((s) => s.label));
}
main();
