/** The screens beside the plan: those that help choosing are loaded together, each of the others when it is first looked at. */
import { lazy, Suspense } from 'react';
import { COMMON } from '../../words';
import { CompareScreen } from './CompareScreen';
import { EvenScreen } from './EvenScreen';
import { HandScreen } from './HandScreen';
import { Says } from './parts';
import { PlaceScreen } from './PlaceScreen';
import type { ToolProps } from './toolProps';

const IntakeScreen = lazy(() => import('./IntakeScreen').then((made) => ({ default: made.IntakeScreen })));
const QuoteScreen = lazy(() => import('./QuoteScreen').then((made) => ({ default: made.QuoteScreen })));
const StockScreen = lazy(() => import('./StockScreen').then((made) => ({ default: made.StockScreen })));
const BenchScreen = lazy(() => import('./BenchScreen').then((made) => ({ default: made.BenchScreen })));
const ListsScreen = lazy(() => import('./ListsScreen').then((made) => ({ default: made.ListsScreen })));
const WeekScreen = lazy(() => import('./WeekScreen').then((made) => ({ default: made.WeekScreen })));

/** Screens that show something also where the chosen clubs cannot be planned: `props.obstacle` says why they cannot. */
function ShopScreen(props: ToolProps) {
  switch (props.pane.state.screen) {
    case 'intake':
      return <IntakeScreen {...props} />;
    case 'quote':
      return <QuoteScreen {...props} />;
    case 'stock':
      return <StockScreen {...props} />;
    case 'bench':
      return <BenchScreen {...props} />;
    case 'lists':
      return <ListsScreen pane={props.pane} />;
    default:
      return <WeekScreen {...props} />;
  }
}

export function ToolScreen(props: ToolProps) {
  switch (props.pane.state.screen) {
    case 'hand':
      return <HandScreen {...props} />;
    case 'compare':
      return props.obstacle ?? <CompareScreen {...props} />;
    case 'even':
      return props.obstacle ?? <EvenScreen {...props} />;
    case 'place':
      return props.obstacle ?? <PlaceScreen {...props} />;
    default:
      return (
        <Suspense fallback={<Says quiet>{COMMON.opening}</Says>}>
          <ShopScreen {...props} />
        </Suspense>
      );
  }
}
