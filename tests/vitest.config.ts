import { defineConfig } from 'vitest/config';

/** Every processor works, and a worker keeps the modules that it has loaded: no test changes what another one finds. */
export default defineConfig({ test: { include: ['tests/**/*.test.ts'], maxWorkers: '100%', isolate: false, testTimeout: 120_000 } });
