/** Loaded into the server that is measured: writes once a second how long its event loop was held up, ms. */
import { writeFileSync } from "node:fs";
import { monitorEventLoopDelay } from "node:perf_hooks";

const file = process.env.LOUPEWORK_LOOP_FILE;
if (file !== undefined) {
  const delay = monitorEventLoopDelay({ resolution: 10 });
  delay.enable();
  const toMs = (nanoseconds) => nanoseconds / 1e6;
  const timer = setInterval(() => {
    const { user, system } = process.cpuUsage();
    const figures = {
      pid: process.pid,
      p50: toMs(delay.percentile(50)),
      p99: toMs(delay.percentile(99)),
      max: toMs(delay.max),
      cpuSeconds: (user + system) / 1e6,
      upSeconds: process.uptime(),
      rssMb: process.memoryUsage().rss / 1e6,
    };
    writeFileSync(`${file}.${process.pid}`, JSON.stringify(figures));
    // Set-up is not what is measured.
    if (process.uptime() < 20) delay.reset();
  }, 1000);
  timer.unref();
}
