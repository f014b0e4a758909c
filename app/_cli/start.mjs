// npm start: installs when needed, builds when needed, serves, prints the address.
import { buildSite, checkNode, installPackages } from './setup.mjs';

checkNode();
installPackages();
buildSite();
const { serve } = await import('./serve.mjs');
const wanted = Number(process.env.PORT ?? 4173);
const { address } = await serve(wanted).catch((error) => {
  if (error.code !== 'EADDRINUSE') throw error;
  console.log(`Port ${wanted} is taken; using a free one.`);
  return serve(0);
});
console.log(`Leeward is ready at ${address}\nStop it with Ctrl+C.`);
