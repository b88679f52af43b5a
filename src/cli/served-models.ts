import { createHash } from 'node:crypto';
import { createReadStream, existsSync } from 'node:fs';
import { copyFile, mkdir, readFile, readdir, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Plugin } from 'vite';

/** One speech model archive that the app may offer, as listed in `models/index.json`. */
export interface ServedModel {
  readonly file: string;
  readonly bytes: number;
  readonly sha256: string;
}

const isArchive = (name: string): boolean => /\.(tar\.gz|tgz|zip)$/i.test(name);

/** Lists the speech model archives in `folder`, with size and SHA-256, in name order. */
export async function listModels(folder: string): Promise<ServedModel[]> {
  const names = existsSync(folder) ? (await readdir(folder)).filter(isArchive).sort() : [];
  return Promise.all(
    names.map(async (file) => {
      const full = path.join(folder, file);
      const sha256 = createHash('sha256')
        .update(await readFile(full))
        .digest('hex');
      return { file, bytes: (await stat(full)).size, sha256 };
    }),
  );
}

/** Vite plugin: whatever archives lie in `folder` are served under `models/` with a fresh index, in development and in the build. */
export function servedModels(folder: string): Plugin {
  let outDir: string | null = null;
  return {
    name: 'bothhands-served-models',
    configResolved(config) {
      if (config.command === 'build') outDir = path.resolve(config.root, config.build.outDir);
    },
    configureServer(server) {
      server.middlewares.use('/models', (request, response, next) => {
        const name = path.basename(new URL(request.url ?? '/', 'http://localhost').pathname);
        if (name === 'index.json') {
          void listModels(folder).then((models) => {
            response.setHeader('content-type', 'application/json');
            response.end(JSON.stringify({ models }));
          }, next);
        } else if (isArchive(name) && existsSync(path.join(folder, name))) {
          createReadStream(path.join(folder, name)).pipe(response);
        } else next();
      });
    },
    async closeBundle() {
      if (outDir === null) return;
      const target = path.join(outDir, 'models');
      await mkdir(target, { recursive: true });
      const models = await listModels(folder);
      await Promise.all(models.map(({ file }) => copyFile(path.join(folder, file), path.join(target, file))));
      await writeFile(path.join(target, 'index.json'), JSON.stringify({ models }));
    },
  };
}
