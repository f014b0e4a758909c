// Serves the finished export on the port that the browser tests expect.
import { serve } from './serve.mjs';

await serve(4391);
