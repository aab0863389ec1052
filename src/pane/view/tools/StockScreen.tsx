import { Says } from './parts';
import type { ToolProps } from './toolProps';

export function StockScreen({ obstacle }: ToolProps) {
  return obstacle ?? <Says quiet>Stock</Says>;
}
