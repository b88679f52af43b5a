import { createServer, type Server } from 'node:http';
import { spawn } from 'node:child_process';
import path from 'node:path';
import sirv from 'sirv';
import { headersFor } from './content-security.ts';

/** Fixed, because a browser keeps its records by address: another port would be another, empty record book. */
const DEFAULT_PORT = 8710;

/**
 * Serves a build folder on this machine only, under the strict policy.
 * @param port 0 takes any free one (for tests)
 * @throws the listen error, e.g. when the port is taken
 */
export async function serveBuild(folder: string, port: number): Promise<{ server: Server; url: string }> {
  const files = sirv(folder, {
    etag: true,
    setHeaders: (response, pathname) => {
      for (const [name, value] of Object.entries(headersFor(pathname))) response.setHeader(name, value);
      // sirv declares .gz files as compressed in transit; a speech model is an archive and must arrive as it is.
      if (pathname.startsWith('/models/')) response.setHeader('content-encoding', 'identity');
    },
  });
  const server = createServer((request, response) => {
    files(request, response, () => {
      response.writeHead(404, { 'content-type': 'text/plain' });
      response.end('No such file.');
    });
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, 'localhost', resolve);
  });
  const address = server.address();
  const taken = typeof address === 'object' && address ? address.port : port;
  return { server, url: `http://localhost:${taken}/` };
}

function openOnDesktop(url: string): void {
  const hasDesktop = process.platform !== 'linux' || Boolean(process.env['DISPLAY'] ?? process.env['WAYLAND_DISPLAY']);
  if (!hasDesktop || process.env['CI']) return;
  const opener = { darwin: 'open', win32: 'explorer' }[process.platform as string] ?? 'xdg-open';
  spawn(opener, [url], { stdio: 'ignore', detached: true })
    .on('error', () => undefined)
    .unref();
}

async function main(): Promise<void> {
  const port = Number(process.env['PORT'] || DEFAULT_PORT);
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    console.error(`PORT must be a whole number from 1 to 65535; it is "${process.env['PORT']}".`);
    process.exit(1);
  }
  try {
    const { url } = await serveBuild(path.resolve(import.meta.dirname, '../../dist'), port);
    console.log(`\nBothhands is at ${url}\nStop it with Ctrl+C.`);
    openOnDesktop(url);
  } catch (error) {
    const busy = (error as NodeJS.ErrnoException).code === 'EADDRINUSE';
    console.error(
      busy
        ? `Port ${port} is taken: is Bothhands already running there? Stop the other program, or start with PORT=… (records stay with their port).`
        : `Could not serve: ${String(error)}`,
    );
    process.exit(1);
  }
}

if (process.argv[1] && path.resolve(process.argv[1]) === import.meta.filename) await main();
