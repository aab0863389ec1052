import { embeddedBench } from './benches';
import { begin, faultSuite } from './faultSuite';

faultSuite({ name: 'embedded', stumbles: 6, begun: async (trial) => begin(await embeddedBench(), trial) });
