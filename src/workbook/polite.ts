import type { NotDone } from './outcomes';
import { PortError } from './port';

type PortRefused = Extract<NotDone, { reason: 'port' }>;

/** Runs a job and gives back what the port refused or failed at as an outcome; our own mistakes are still thrown. */
export async function politely<T>(job: () => Promise<T>): Promise<T | PortRefused> {
  try {
    return await job();
  } catch (error) {
    if (error instanceof PortError) return { done: false, reason: 'port', error };
    throw error;
  }
}
