import path from 'node:path';
import { build, createServer } from 'vite';
import type { TestProject } from 'vitest/node';
import { serveBuild } from '../../src/cli/serve.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** The built app, served as `npm start` serves it. */
    appUrl: string;
    /** The sources, served one module at a time: `import('/hearing/…ts')` works in a page opened there. */
    modulesUrl: string;
  }
}

const project = path.resolve(import.meta.dirname, '../..');
const configFile = path.join(project, 'vite.config.ts');

declare global {
  /** Each project loads this file anew, and two builds at once would empty each other's folder. */
  var bothhandsBuild: Promise<unknown> | undefined;
}

/** With the libraries as they are for users: under a test runner, some would put in their means for development. */
async function buildAsForUsers(): Promise<void> {
  const { NODE_ENV } = process.env;
  process.env['NODE_ENV'] = 'production';
  await build({ configFile, logLevel: 'error' });
  process.env['NODE_ENV'] = NODE_ENV;
}

/** Builds once, then serves the build and the sources for the browser tests of a project. */
export default async function setup({ provide }: TestProject): Promise<() => Promise<void>> {
  await (globalThis.bothhandsBuild ??= buildAsForUsers());
  const app = await serveBuild(path.join(project, 'dist'), 0);
  provide('appUrl', app.url);

  const modules = await createServer({
    configFile,
    logLevel: 'error',
    server: { port: 0, host: 'localhost', fs: { allow: [project] } },
  });
  await modules.listen();
  provide('modulesUrl', modules.resolvedUrls?.local[0] ?? '');

  return async () => {
    app.server.closeAllConnections();
    app.server.close();
    await modules.close();
  };
}
