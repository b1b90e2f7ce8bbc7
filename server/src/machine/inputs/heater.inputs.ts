import { fallbacks } from '../input.ts';

export default fallbacks({ input: 'heater.power', symbol: 'P_h' });
