import { Says } from './parts';
import type { ToolProps } from './toolProps';

export function QuoteScreen({ obstacle }: ToolProps) {
  return obstacle ?? <Says quiet>Quote</Says>;
}
