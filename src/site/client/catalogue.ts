import { startFinding } from './find-page.ts';
import { pageData } from './page-data.ts';

// The script of the first page. Without it the page can be read.
const data = pageData();
const form = document.querySelector<HTMLFormElement>('form#find');
const list = document.getElementById('pairings');
if (data !== null && form !== null && list !== null) startFinding(form, list, data);
