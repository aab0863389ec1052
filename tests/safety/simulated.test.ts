import { simulatedBench } from './benches';
import { begin, faultSuite } from './faultSuite';

faultSuite({ name: 'simulated', stumbles: 6, begun: (trial) => begin(simulatedBench(), trial) });
