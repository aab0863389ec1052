/** The screens that help choosing, loaded together when one of them is first looked at. */
import { BenchScreen } from './BenchScreen';
import { CompareScreen } from './CompareScreen';
import { EvenScreen } from './EvenScreen';
import { HandScreen } from './HandScreen';
import { PlaceScreen } from './PlaceScreen';
import type { ToolProps } from './toolProps';

export function ToolScreen(props: ToolProps) {
  const { screen } = props.pane.state;
  if (screen === 'hand') return <HandScreen {...props} />;
  if (props.obstacle) return props.obstacle;
  if (screen === 'bench') return <BenchScreen {...props} />;
  if (screen === 'compare') return <CompareScreen {...props} />;
  return screen === 'even' ? <EvenScreen {...props} /> : <PlaceScreen {...props} />;
}
