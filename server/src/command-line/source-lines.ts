export { TextLines as SourceLines, type TextPlace } from '../services/text-lines.ts';
