import { blobsIn, treeEntries } from '../../src/host/git-answers.ts';
import { fileOfBytes } from '../../src/registry/registry-file.ts';
import { sampleTexts } from '../../tests/sample-texts.ts';
import { type FuzzArea, must } from './fuzz-area.ts';

const files = [...sampleTexts()].slice(0, 6);
const id = (index: number) => `${index}`.repeat(40).slice(0, 40);
const size = (text: string) => Buffer.byteLength(text);

const listing = files
  .map(([path, text], index) => `100644 blob ${id(index)} ${`${size(text)}`.padStart(7)}\tprofiles/${path}\0`)
  .join('');
const contents = files.map(([, text], index) => `${id(index)} blob ${size(text)}\n${text}\n`).join('');

/** What git says of a commit: its list of files, or their contents. */
export const gitArea: FuzzArea = {
  name: 'git answers',
  share: 0.25,
  seeds: [
    listing,
    contents,
    `${id(9)} missing\n${contents}`,
    `120000 blob ${id(8)}       9\tprofiles/link\0${listing}`,
  ],
  take: (text) => {
    const entries = treeEntries(text, 'profiles');
    for (const { path, size: bytes } of entries) {
      must(path.length > 0 && bytes >= 0, 'an entry that cannot be');
      fileOfBytes({ shown: 'profiles' }, path, Buffer.from('kind: job\n'));
    }
    const answer = Buffer.from(text);
    const blobs = blobsIn(answer);
    let all = 0;
    for (const content of blobs.values()) all += content.length;
    must(all <= answer.length, 'more contents than the answer holds');
    return entries.length + blobs.size >= files.length;
  },
};
