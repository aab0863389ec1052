import { MemoryPort } from '../workbook/memoryPort';
import { memoryBench } from './benches';
import { begin, faultSuite } from './faultSuite';
import type { Trial } from './trials';

const beginnings = new Map<Trial, MemoryPort>();

faultSuite({
  name: 'memory',
  stumbles: 3,
  begun: async (trial) => {
    const port = beginnings.get(trial) ?? new MemoryPort();
    if (!beginnings.has(trial)) await begin(memoryBench(port), trial);
    beginnings.set(trial, port);
    return memoryBench(port.copy());
  },
});
