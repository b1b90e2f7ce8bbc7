/** Ball screws and rolling contacts against printed values. */
import { describe, expect, test } from 'vitest';
import { ballScrewBackDrivingTorque, ballScrewDriveTorque, liftOffForce } from '../../server/src/mechanics/ball-screw.ts';
import { lifeAsTravelAndTime, ratingForLife, ratingLife } from '../../server/src/mechanics/ball-screw-life.ts';

describe('ball screws', () => {
  test('Wentzell, Machine Design, example 18.4, p. 405: 2900 lbf on 0.5 in lead at 90 %: 256.65 lbf·in, 0.48 hp', () => {
    // The book's factor 0.177 is 1/(2 pi 0.9) = 0.17684 rounded: 0.09 % high.
    const torque = ballScrewDriveTorque(2900, 0.5, 0.9);
    expect(Math.abs(torque / 256.65 - 1)).toBeLessThan(1e-3);
    // One horsepower is 6600 lbf·in/s; 116.67 rpm. The book rounds up to 0.48.
    const power = (torque * 116.66666666666667 * 2 * Math.PI) / 60 / 6600;
    expect(Math.abs(power - 0.48)).toBeLessThan(0.006);
  });

  test('common practice: back-driving factor 0.143 F l at 90 %', () => {
    expect(ballScrewBackDrivingTorque(1, 1, 0.9)).toBeCloseTo(0.143, 3);
  });

  test('common practice: the slack half lets go at 2.83 times the preload', () => {
    expect(liftOffForce(1)).toBeCloseTo(2.83, 2);
  });
});

describe('rating life, exponent 3', () => {
  test('Wentzell, Machine Design, example 20.1, p. 431: 5050 lbf rating, 2400 lbf, 1750 rpm: 88.73 h', () => {
    const life = ratingLife(5050, 2400);
    const { time } = lifeAsTravelAndTime(life, 1, (1750 * 2 * Math.PI) / 60);
    expect(time / 3600).toBeCloseTo(88.73, 2);
  });

  test('Wentzell, Machine Design, example 20.2, p. 432: 21 million turns need 6621.42 lbf', () => {
    expect(ratingForLife(2400, 21e6)).toBeCloseTo(6621.42, 2);
  });
});
