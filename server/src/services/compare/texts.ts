/** Reading a text without analysing it, for hosts that first look whether anything has changed. */
export { readDocument } from '../../language/read-document.ts';
