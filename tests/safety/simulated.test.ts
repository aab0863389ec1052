import { simulatedBench } from './benches';
import { begin, faultSuite } from './faultSuite';

faultSuite({ name: 'simulated', stumbles: 7, begun: (trial) => begin(simulatedBench(), trial) });
