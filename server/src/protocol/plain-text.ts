export { plainText } from '../services/plain-text.ts';
