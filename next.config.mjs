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
  experimental: { cpus: 2 },
};

export default config;
