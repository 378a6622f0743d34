import { startComparing } from './compare-page.ts';
import { startFinding } from './find-page.ts';
import { pageData } from './page-data.ts';

// The script of the catalogue: each page has what it needs of it. Without it every page can be read.
const data = pageData();
const form = document.querySelector<HTMLFormElement>('form#find');
const list = document.getElementById('pairings');
const compare = document.getElementById('compare');
if (data !== null && form !== null && list !== null) startFinding(form, list, data);
if (data !== null && compare !== null) startComparing(compare, data);
