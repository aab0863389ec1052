/** What a grip is called beside its code: under Description, or else by its model, where that is not the code itself. */
import { folded } from './headings';

export function describedBy(text: (key: string) => string | undefined): string | undefined {
  const described = text('description');
  if (described !== undefined) return described;
  const model = text('model');
  return folded(model) === folded(text('item')) ? undefined : model;
}
