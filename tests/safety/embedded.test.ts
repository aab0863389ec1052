import { embeddedBench } from './benches';
import { begin, faultSuite } from './faultSuite';

faultSuite({ name: 'embedded', stumbles: 3, begun: async (trial) => begin(await embeddedBench(), trial) });
