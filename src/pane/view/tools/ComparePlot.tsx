/** Every grip by its size error and by the largest change of a reading: unbeaten ones solid, the rest hollow. */
import { makeStyles, mergeClasses, tokens } from '@fluentui/react-components';
import type { ComparePlotModel } from '../../state/compareModel';
import { COMPARE_WORDS } from '../../toolWords';
import { signedText } from '../../words';

const useStyles = makeStyles({
  figure: { margin: 0 },
  legend: {
    display: 'flex',
    flexWrap: 'wrap',
    columnGap: '12px',
    rowGap: '2px',
    margin: '0 0 4px',
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground2,
  },
  key: { display: 'inline-flex', alignItems: 'center', columnGap: '4px' },
  grid: {
    display: 'grid',
    gridTemplateColumns: '34px minmax(0, 1fr)',
    fontSize: tokens.fontSizeBase200,
    color: tokens.colorNeutralForeground2,
  },
  yTitle: { gridColumn: '1 / -1', lineHeight: '18px', marginBottom: '6px' },
  yAxis: { position: 'relative', height: '168px' },
  yTick: {
    position: 'absolute',
    right: '6px',
    transform: 'translateY(-50%)',
    lineHeight: '16px',
    whiteSpace: 'nowrap',
  },
  field: { position: 'relative', height: '168px' },
  drawing: {
    position: 'absolute',
    inset: '0',
    width: '100%',
    height: '100%',
    border: `1px solid ${tokens.colorNeutralStroke2}`,
    boxSizing: 'border-box',
  },
  xAxis: { gridColumn: '2', position: 'relative', height: '18px' },
  xTick: { position: 'absolute', transform: 'translateX(-50%)', lineHeight: '18px', whiteSpace: 'nowrap' },
  xTitle: { gridColumn: '2', textAlign: 'right', lineHeight: '16px' },
  line: { stroke: tokens.colorNeutralStroke3 },
  zero: { stroke: tokens.colorNeutralStrokeAccessible, '@media (forced-colors: active)': { stroke: 'GrayText' } },
  band: {
    fill: tokens.colorNeutralBackground6,
    stroke: tokens.colorNeutralStroke1,
    '@media (forced-colors: active)': { fill: 'Canvas', stroke: 'GrayText' },
  },
  unbeaten: {
    fill: tokens.colorBrandForeground1,
    stroke: tokens.colorNeutralBackground1,
    '@media (forced-colors: active)': { fill: 'Highlight', stroke: 'Canvas' },
  },
  beaten: {
    fill: tokens.colorNeutralBackground1,
    stroke: tokens.colorNeutralForeground3,
    '@media (forced-colors: active)': { fill: 'Canvas', stroke: 'CanvasText' },
  },
  looked: { fill: 'none', stroke: tokens.colorNeutralForeground1 },
});

function Mark({ unbeaten }: { readonly unbeaten: boolean }) {
  const styles = useStyles();
  return unbeaten ? (
    <path d="M0-6 6 0 0 6-6 0z" className={styles.unbeaten} strokeWidth="1" />
  ) : (
    <circle r="3.5" className={styles.beaten} strokeWidth="1.4" />
  );
}

function Legend({ band }: { readonly band: boolean }) {
  const styles = useStyles();
  const keys: readonly (readonly [string, JSX.Element])[] = [
    [COMPARE_WORDS.unbeaten, <Mark key="unbeaten" unbeaten />],
    [COMPARE_WORDS.beatenKey, <Mark key="beaten" unbeaten={false} />],
    ...(band
      ? [
          [
            COMPARE_WORDS.bandKey,
            <rect key="band" x="-7" y="-5" width="14" height="10" className={styles.band} />,
          ] as const,
        ]
      : []),
  ];
  return (
    <p className={styles.legend} aria-hidden="true">
      {keys.map(([word, mark]) => (
        <span key={word} className={styles.key}>
          <svg width="16" height="18" viewBox="-8 -9 16 18" focusable="false">
            {mark}
          </svg>
          {word}
        </span>
      ))}
    </p>
  );
}

interface PlotProps {
  readonly plot: ComparePlotModel;
  /** The grip whose details are open. */
  readonly looked: string | null;
}

export function ComparePlot({ plot, looked }: PlotProps) {
  const styles = useStyles();
  const { x, y, within } = plot;
  const across = (value: number) => `${((value - x.low) / (x.high - x.low)) * 100}%`;
  const down = (value: number) => `${((y.high - value) / (y.high - y.low)) * 100}%`;
  const span = (low: number, high: number, axis: typeof x) => `${((high - low) / (axis.high - axis.low)) * 100}%`;
  const unbeaten = plot.points.filter((point) => point.unbeaten).length;
  return (
    <figure className={styles.figure}>
      <Legend band={within !== undefined} />
      <div
        role="img"
        aria-label={COMPARE_WORDS.plotText(plot.points.length, unbeaten, plot.xIs)}
        className={styles.grid}
      >
        <div className={styles.yTitle}>{COMPARE_WORDS.plotY}</div>
        <div className={styles.yAxis}>
          {y.ticks.map((tick) => (
            <span key={tick} className={styles.yTick} style={{ top: down(tick) }}>
              {signedText(tick, 0)}
            </span>
          ))}
        </div>
        <div className={styles.field}>
          <svg className={styles.drawing} focusable="false">
            {within && (
              <rect
                x={across(-within.x)}
                width={span(-within.x, within.x, x)}
                y={down(within.y)}
                height={span(-within.y, within.y, y)}
                className={styles.band}
              />
            )}
            {x.ticks.map((tick) => (
              <line
                key={tick}
                x1={across(tick)}
                x2={across(tick)}
                y1="0"
                y2="100%"
                className={tick === 0 ? styles.zero : styles.line}
              />
            ))}
            {y.ticks.map((tick) => (
              <line
                key={tick}
                x1="0"
                x2="100%"
                y1={down(tick)}
                y2={down(tick)}
                className={tick === 0 ? styles.zero : styles.line}
              />
            ))}
            {[false, true].map((solid) =>
              plot.points
                .filter((point) => point.unbeaten === solid)
                .map((point) => (
                  <svg key={point.key} x={across(point.x)} y={down(point.y)} overflow="visible">
                    <Mark unbeaten={solid} />
                    {point.key === looked && <circle r="9" className={styles.looked} strokeWidth="1.5" />}
                  </svg>
                )),
            )}
          </svg>
        </div>
        <div className={mergeClasses(styles.xAxis)}>
          {x.ticks.map((tick) => (
            <span key={tick} className={styles.xTick} style={{ left: across(tick) }}>
              {signedText(tick, 0)}
            </span>
          ))}
        </div>
        <div className={styles.xTitle}>{plot.xIs === 'size' ? COMPARE_WORDS.plotX : COMPARE_WORDS.plotMass}</div>
      </div>
    </figure>
  );
}
