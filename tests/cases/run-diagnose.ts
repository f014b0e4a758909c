import { pathToFileURL } from 'node:url';
import { join } from 'node:path';

/**
 * Runs the diagnose command once for every file named, in one process: starting the loader for each file would take most
 * of the time. The command is loaded anew each time and sees the arguments that `npm run -s diagnose -- FILE --json`
 * would give it; the answers are parted by lines of ASCII record separators.
 */
const files = process.argv.slice(2);
const command = pathToFileURL(join(import.meta.dirname, '../../app/_cli/diagnose.ts')).href;
for (const [number, file] of files.entries()) {
  process.argv = [process.argv[0] ?? '', command, file, '--json'];
  await import(`${command}?case=${number}`);
  console.log('\u001e');
}
