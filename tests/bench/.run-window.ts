import { measureWindow } from './window.ts';
console.log(JSON.stringify(await measureWindow(), null, 1));
