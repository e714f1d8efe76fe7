/** @type {import("next").NextConfig} */
const config = {
  reactStrictMode: true,
  poweredByHeader: false,
  devIndicators: false,
  // Types are checked by `npm run check`; a second pass in the build only costs time.
  typescript: { ignoreBuildErrors: true },
  serverExternalPackages: [
    "@node-rs/argon2",
    "@react-pdf/renderer",
    "sharp",
    "@prisma/client",
    "@prisma/adapter-libsql",
    "@libsql/client",
    "libsql",
  ],
  // An exercise set of a whole school is a few megabytes of JSON.
  experimental: {
    serverActions: { bodySizeLimit: "16mb" },
    optimizePackageImports: ["@mantine/core", "@mantine/hooks", "lucide-react"],
  },
  distDir: process.env.LOUPEWORK_BUILD_DIR ?? ".next",
};
export default config;
