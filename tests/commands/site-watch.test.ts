import { rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { get } from 'node:http';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { serveFolder } from '../../src/host/serve-folder.ts';
import { runCommand } from '../run-command.ts';
import { sampleRegistry, temporaryFolder } from '../sample-registry.ts';

/** What a server answers, asked by any name. */
function answerOf(address: string, headers = {}): Promise<{ status: number; text: string; type: string }> {
  return new Promise((resolve, reject) => {
    get(address, { headers, agent: false }, (response) => {
      let text = '';
      response.setEncoding('utf8');
      response.on('data', (part) => {
        text += part;
      });
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, text, type: response.headers['content-type'] ?? '' }),
      );
    }).on('error', reject);
  });
}

describe('site --watch', () => {
  it('serves the catalogue, and writes again what changes', async () => {
    const registry = sampleRegistry();
    const seen: string[] = [];
    let address = '';
    const page = async () => {
      seen.push((await answerOf(`${address}jobs/hook.html`)).text);
    };
    async function* changes() {
      await page();
      registry.edit('jobs/hook.yaml', 'version: 1.0.0', 'version: 1.0.1');
      yield;
      await page();
    }
    const { status, out, err } = await runCommand(
      registry.cwd,
      ['site', '--out', 'public', '--watch', '--port', '0'],
      {
        changes,
        serve: async (folder, port) => {
          const served = await serveFolder(folder, port);
          address = served.address;
          return served;
        },
      },
    );
    expect(status).toBe(0);
    expect(err).toBe(`Served to this machine at ${address}. Waiting for changes; Ctrl+C ends it.\n`);
    expect(out.match(/files under public/g)).toHaveLength(2);
    expect(seen.map((text) => text.includes('1.0.1'))).toEqual([false, true]);
    await expect(answerOf(address)).rejects.toThrow('ECONNREFUSED');
  });

  it('says where it cannot serve', async () => {
    const first = await serveFolder(temporaryFolder(), 0);
    const port = new URL(first.address).port;
    async function* changes() {}
    const { status, err } = await runCommand(
      sampleRegistry().cwd,
      ['site', '--out', 'public', '--watch', '--port', port],
      { changes, serve: serveFolder },
    );
    first.close();
    expect(status).toBe(2);
    expect(err).toContain(`The catalogue cannot be served at port ${port} (EADDRINUSE)`);
  });

  it.each(['65536', 'eighty'])('refuses the port %s', async (port) => {
    const { status, err } = await runCommand(sampleRegistry().cwd, [
      ...['site', '--out', 'public', '--watch', '--port', port],
    ]);
    expect(status).toBe(2);
    expect(err).toContain('write a whole number up to 65535');
  });
});

describe('a served folder', () => {
  it('gives its files with their kind, and nothing else', async () => {
    const outside = temporaryFolder();
    const folder = temporaryFolder();
    writeFileSync(join(outside, 'secret.json'), '"secret"');
    writeFileSync(join(folder, 'page.html'), '<p>page');
    writeFileSync(join(folder, '.hidden'), 'hidden');
    symlinkSync(join(outside, 'secret.json'), join(folder, 'link.json'));
    const { address, close } = await serveFolder(folder, 0);
    expect(await answerOf(`${address}page.html`)).toMatchObject({ status: 200, text: '<p>page' });
    expect((await answerOf(`${address}page.html`)).type).toContain('text/html');
    const out = `..%2f${outside.split('/').at(-1)}%2fsecret.json`;
    for (const path of ['missing.html', '.hidden', out, 'link.json', '%', 'page.html%00.html'])
      expect(await answerOf(address + path)).toMatchObject({ status: 404 });
    rmSync(folder, { recursive: true });
    expect(await answerOf(`${address}page.html`)).toMatchObject({ status: 404 });
    close();
  });

  it('is refused to a page that leads its own name here', async () => {
    const { address, close } = await serveFolder(temporaryFolder(), 0);
    expect(await answerOf(address, { host: 'elsewhere.example' })).toMatchObject({ status: 421 });
    close();
  });
});
