// Set before Next reads it: the build must not connect to anything.
process.env.NEXT_TELEMETRY_DISABLED = '1';

/** @type {import('next').NextConfig} */
const config = {
  output: 'export',
  trailingSlash: true,
  typedRoutes: true,
  reactStrictMode: true,
  agentRules: false,
  poweredByHeader: false,
  // Types are checked by `npm test` and `npm run typecheck`, over the tests too; a second time here would take a third of the build.
  typescript: { ignoreBuildErrors: true },
  experimental: { cpus: 2 },
};

export default config;
