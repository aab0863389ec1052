import { serveSite } from './serve.mjs';
import { buildSite } from './site.mjs';

/** Vitest's set-up for the tests that look at the finished site: built once (not at all where it is fresh) and served while they run. */
export async function setup() {
  await buildSite();
  const site = await serveSite();
  // The workers are started after this and inherit it.
  process.env.SETWRIGHT_SITE = site.address;
  return () => site.close();
}
