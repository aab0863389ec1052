/** The pane's state on the demo workbook, without a screen: what is planned with the fields as they stand. */
import { drained, parseReading, type PlanInput, type SetPlan } from '../../src/core/index';
import { readForm, sparingPutters, type Form } from '../../src/pane/state/form';
import { seenOf } from '../../src/pane/state/lookAt';
import { previewSteps } from '../../src/pane/state/previewSteps';
import {
  afterEvent,
  concernedIn,
  plannedRows,
  puttersBeside,
  START,
  type PaneEvent,
  type PaneState,
} from '../../src/pane/state/paneState';
import { readShop, type Shop } from '../../src/workbook/shop';
import { demoTables } from '../../src/tryout/demo/demoTables';
import { demoJobs } from '../../src/tryout/demo/jobs';
import { MemoryPort } from '../workbook/memoryPort';

export const DEMO_JOBS = demoJobs.map(({ job }) => String(job));

export function demoPort(): MemoryPort {
  const port = new MemoryPort();
  for (const [name, rows] of Object.entries(demoTables)) {
    port.typeTable(
      name,
      name,
      rows.map((row) => row.map((cell) => (cell === '' ? null : cell))),
    );
  }
  return port;
}

export const after = (state: PaneState, ...events: PaneEvent[]): PaneState => events.reduce(afterEvent, state);

/** The pane as it stands once the demo was read, as a person may have changed it, and a job chosen. */
export async function demoPane(
  job: string,
  form: Partial<Form> = {},
  change: (port: MemoryPort) => void = () => undefined,
): Promise<PaneState> {
  const port = demoPort();
  change(port);
  const shop = seenOf(await readShop(port));
  return after(
    START,
    { on: 'seen', shop },
    { on: 'who', who: { by: 'job', job } },
    ...(Object.keys(form).length ? [{ on: 'form', change: form } as const] : []),
  );
}

/** The plan of what stands in the fields, and the clubs that a screen which helps choosing works on. */
export function planOf(state: PaneState): { readonly plan: SetPlan; readonly concerned: PlanInput } {
  const rows = plannedRows(state);
  const { choices } = readForm(state.form, (text) => parseReading(text).ok);
  const spared = sparingPutters(choices, state.form, puttersBeside(state, rows));
  const preview = drained(previewSteps(state.shop?.shop as Shop, rows, spared));
  if (!preview.ok) throw new Error(`job cannot be planned: ${preview.issue.code}`);
  return { plan: preview.value.plan, concerned: concernedIn(preview.value.input, state.form.puttersToo) };
}
