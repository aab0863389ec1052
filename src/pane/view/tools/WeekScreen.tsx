import { Says } from './parts';
import type { ToolProps } from './toolProps';

export function WeekScreen({ obstacle }: ToolProps) {
  return obstacle ?? <Says quiet>Week</Says>;
}
