import { writeFileSync } from 'node:fs';

process.on('exit', () => {
  writeFileSync(process.env.PEAK_FILE, String(process.resourceUsage().maxRSS * 1024));
});
