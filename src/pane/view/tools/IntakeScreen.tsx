import { Says } from './parts';
import type { ToolProps } from './toolProps';

export function IntakeScreen({ obstacle }: ToolProps) {
  return obstacle ?? <Says quiet>Intake</Says>;
}
