/**
 * Reading by club on one shared scale: a ring as it arrived, a diamond with the grip alone, a solid bar with the weight in.
 *
 * Drawn in percent of its own width, so that it needs no measuring and nothing moves when the pane is resized.
 */
import { makeStyles, mergeClasses, tokens } from '@fluentui/react-components';
import type { PlotModel, PlotRow } from '../state/plot';
import type { Summary } from '../state/summary';
import { asideText, PLOT, plotText, tickText, verdictWord } from '../words';
import { useVerdictColour, VerdictMark } from './VerdictMark';
import { TINY } from './narrow';

const useStyles = makeStyles({
  figure: { margin: 0 },
  legend: {
    display: 'flex',
    flexWrap: 'wrap',
    columnGap: '12px',
    rowGap: '2px',
    margin: '0 0 6px',
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground2,
  },
  key: { display: 'inline-flex', alignItems: 'center', columnGap: '4px' },
  grid: {
    display: 'grid',
    gridTemplateColumns: 'fit-content(92px) minmax(0, 1fr) 24px',
    fontSize: tokens.fontSizeBase200,
    lineHeight: '22px',
    color: tokens.colorNeutralForeground1,
  },
  scale: {
    gridColumn: '1',
    lineHeight: '18px',
    color: tokens.colorNeutralForeground2,
    // Half of a tick's word stands before the scale begins.
    paddingRight: '14px',
    whiteSpace: 'nowrap',
  },
  axis: { gridColumn: '2', position: 'relative', height: '18px', color: tokens.colorNeutralForeground2 },
  tick: { position: 'absolute', transform: 'translateX(-50%)', lineHeight: '18px', whiteSpace: 'nowrap' },
  name: { gridColumn: '1', overflow: 'hidden', textOverflow: 'ellipsis', whiteSpace: 'nowrap', paddingRight: '6px' },
  track: {
    position: 'relative',
    height: '22px',
    boxSizing: 'border-box',
    borderTop: `1px solid ${tokens.colorNeutralStroke3}`,
  },
  cell: { borderTop: `1px solid ${tokens.colorNeutralStroke3}`, boxSizing: 'border-box', height: '22px' },
  end: { textAlign: 'right', paddingTop: '1px' },
  drawing: { position: 'absolute', inset: '0', width: '100%', height: '100%', overflow: 'visible' },
  line: { stroke: tokens.colorNeutralStroke3 },
  band: {
    fill: tokens.colorNeutralBackground6,
    stroke: tokens.colorNeutralStroke1,
    '@media (forced-colors: active)': { fill: 'Canvas', stroke: 'GrayText' },
  },
  held: {
    stroke: tokens.colorNeutralStrokeAccessible,
    strokeDasharray: '2 2',
    '@media (forced-colors: active)': { stroke: 'GrayText' },
  },
  path: { stroke: tokens.colorNeutralStroke1, '@media (forced-colors: active)': { stroke: 'GrayText' } },
  before: {
    fill: tokens.colorNeutralBackground1,
    stroke: tokens.colorNeutralForeground3,
    '@media (forced-colors: active)': { fill: 'Canvas', stroke: 'CanvasText' },
  },
  gripped: {
    fill: tokens.colorBrandForeground1,
    stroke: tokens.colorNeutralBackground1,
    '@media (forced-colors: active)': { fill: 'Highlight', stroke: 'Canvas' },
  },
  aside: {
    position: 'absolute',
    left: '4px',
    lineHeight: '21px',
    color: tokens.colorNeutralForeground2,
    whiteSpace: 'nowrap',
    // The table below says it whole.
    [TINY]: { right: 0, overflow: 'hidden', textOverflow: 'ellipsis' },
  },
});

/** The three marks about the point 0,0; their shapes, not their colours, tell them apart. */
function Ring({ className }: { readonly className: string }) {
  return <circle r="4" className={className} strokeWidth="1.6" />;
}
function Diamond({ className }: { readonly className: string }) {
  return <path d="M0-5.5 5 0 0 5.5-5 0z" className={className} strokeWidth="1" />;
}
function Bar() {
  return <rect x="-2" y="-8" width="4" height="16" rx="1.6" fill="currentColor" />;
}

/** Puts a mark at so many percent: a nested drawing takes percent for x, a transform would not. */
function At({ percent, children }: { readonly percent: number; readonly children: React.ReactNode }) {
  return (
    <svg x={`${percent}%`} y="50%" overflow="visible">
      {children}
    </svg>
  );
}

function Legend({ rows }: { readonly rows: PlotModel['rows'] }) {
  const styles = useStyles();
  // Weight and range are drawn in the colour of their verdict; the legend wears one that is there.
  const colour = useVerdictColour(rows.find(({ aside }) => !aside)?.verdict ?? 'unknown');
  const verdicts = [...new Set(rows.map(({ verdict }) => verdict))];
  const keys: readonly (readonly [string, JSX.Element])[] = [
    [PLOT.before, <Ring key="ring" className={styles.before} />],
    [PLOT.gripped, <Diamond key="diamond" className={styles.gripped} />],
    [PLOT.after, <Bar key="bar" />],
    [PLOT.spread, <path key="spread" d="M-7 0H7" stroke="currentColor" strokeWidth="2" />],
    [PLOT.band, <rect key="band" x="-7" y="-5" width="14" height="10" rx="2" className={styles.band} />],
  ];
  return (
    <p className={styles.legend} aria-hidden="true">
      {keys.map(([word, mark]) => (
        <span key={word} className={styles.key}>
          <svg width="16" height="18" viewBox="-8 -9 16 18" focusable="false" className={colour}>
            {mark}
          </svg>
          {word}
        </span>
      ))}
      {verdicts.map((verdict) => (
        <span key={verdict} className={styles.key}>
          <VerdictMark verdict={verdict} />
          {verdictWord(verdict)}
        </span>
      ))}
    </p>
  );
}

function Marks({ row, percent }: { readonly row: PlotRow; readonly percent: (value: number) => number }) {
  const styles = useStyles();
  const colour = useVerdictColour(row.verdict);
  const { before, gripped, after, spread, band } = row;
  const last = after ?? gripped;
  // Where no weight goes in, the grip's mark is the last one.
  const weighted = after !== undefined && Math.abs(after - (gripped ?? Infinity)) > 0.005;
  const path = [before, gripped, after].filter((value) => value !== undefined);
  return (
    <>
      {band && (
        <>
          <rect
            x={`${percent(band.low)}%`}
            width={`${percent(band.high) - percent(band.low)}%`}
            y="4"
            height="13"
            rx="2"
            className={styles.band}
          />
          <line
            x1={`${percent((band.low + band.high) / 2)}%`}
            x2={`${percent((band.low + band.high) / 2)}%`}
            y1="4"
            y2="17"
            className={styles.held}
          />
        </>
      )}
      {path.length > 1 && (
        <line
          x1={`${percent(Math.min(...path))}%`}
          x2={`${percent(Math.max(...path))}%`}
          y1="50%"
          y2="50%"
          strokeWidth="1.5"
          className={styles.path}
        />
      )}
      {last !== undefined && spread !== undefined && (
        <g className={colour}>
          <line
            x1={`${percent(last - spread)}%`}
            x2={`${percent(last + spread)}%`}
            y1="50%"
            y2="50%"
            stroke="currentColor"
            strokeWidth="2"
          />
        </g>
      )}
      {before !== undefined && (
        <At percent={percent(before)}>
          <Ring className={styles.before} />
        </At>
      )}
      {gripped !== undefined && (
        <At percent={percent(gripped)}>
          <Diamond className={styles.gripped} />
        </At>
      )}
      {weighted && (
        <g className={colour}>
          <At percent={percent(after ?? 0)}>
            <Bar />
          </At>
        </g>
      )}
    </>
  );
}

function Row({
  plot,
  row,
  percent,
}: {
  readonly plot: PlotModel;
  readonly row: PlotRow;
  readonly percent: (value: number) => number;
}) {
  const styles = useStyles();
  return (
    <>
      <span className={mergeClasses(styles.name, styles.cell)}>{row.name}</span>
      <span className={styles.track}>
        <svg className={styles.drawing} focusable="false">
          {plot.ticks.map((tick) => (
            <line
              key={tick}
              x1={`${percent(tick)}%`}
              x2={`${percent(tick)}%`}
              y1="0"
              y2="100%"
              className={styles.line}
            />
          ))}
          {!row.aside && <Marks row={row} percent={percent} />}
        </svg>
        {row.aside && <span className={styles.aside}>{asideText(row)}</span>}
      </span>
      <span className={mergeClasses(styles.end, styles.cell)}>
        <VerdictMark verdict={row.verdict} />
      </span>
    </>
  );
}

function Axis({ plot, percent }: { readonly plot: PlotModel; readonly percent: (value: number) => number }) {
  const styles = useStyles();
  return (
    <>
      <div className={styles.scale}>{PLOT.scale[plot.scale]}</div>
      <div className={styles.axis}>
        {plot.ticks.map((tick) => (
          <span key={tick} className={styles.tick} style={{ left: `${percent(tick)}%` }}>
            {tickText(tick, plot.scale)}
          </span>
        ))}
      </div>
    </>
  );
}

export function Plot({ plot, summary }: { readonly plot: PlotModel; readonly summary: Summary }) {
  const styles = useStyles();
  const percent = (value: number) => ((value - plot.low) / (plot.high - plot.low)) * 100;
  return (
    <figure className={styles.figure}>
      <Legend rows={plot.rows} />
      <div role="img" aria-label={plotText(plot, summary)} className={styles.grid}>
        <Axis plot={plot} percent={percent} />
        {plot.rows.map((row) => (
          <Row key={row.row} plot={plot} row={row} percent={percent} />
        ))}
      </div>
    </figure>
  );
}
