/**
 * The widgets room: how things look and are handled, without a word of the trade. Screens take everything from here;
 * importing it also brings the styles in. Props are plain texts, numbers and callbacks.
 * Worked figure: a row is 44 or 48 px, every target at least 44.
 */
import './styles/index.css';

export { AxisKey, type AxisKeyProps } from './AxisHead.tsx';
export type { AxisMoves, ShiftPhase } from './axis-drag.ts';
export type {
  AxisBar,
  AxisGraph,
  AxisGroup,
  AxisLink,
  AxisScale,
} from './axis-spec.ts';
export * from './Buttons.tsx';
export * from './CashPicture.tsx';
export * from './ChartFrame.tsx';
export type { ScrubberProps } from './ChartScrubber.tsx';
export * from './Choices.tsx';
export { Code, type CodeProps } from './Code.tsx';
export type { ChartColour, ChartGeometry, ChartSeries, ChartSpec } from './chart-spec.ts';
export { xOf, yOf } from './chart-spec.ts';
export { classNames } from './class-names.ts';
export * from './Disclosure.tsx';
export { type FieldFrameProps, OriginTag, type OriginTagProps } from './FieldFrame.tsx';
export * from './Fields.tsx';
export * from './Figure.tsx';
export * from './FoldingRule.tsx';
export type { StepKind } from './hold-repeat.ts';
export * from './Keypad.tsx';
export { type KeypadKey, type Typing, typeKey } from './keypad-typing.ts';
export type { DragPhase } from './LadderGrip.tsx';
export * from './LadderPicture.tsx';
export * from './Marks.tsx';
export { useWide } from './media.ts';
export * from './Notices.tsx';
export * from './Rail.tsx';
export * from './Sheet.tsx';

export * from './Table.tsx';
export * from './TextArea.tsx';
export * from './TimeAxis.tsx';
export * from './TurnButton.tsx';
