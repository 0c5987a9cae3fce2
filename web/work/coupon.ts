/** One coupon file for the page: its figures, what is to be said of it, and its drawing. */
import { evaluateCoupon } from '@hoopwright/core/steel';
import { couponScene, findingText, verdictText } from '@hoopwright/report/coupon';
import type { Manner } from '@hoopwright/report/figure';
import type { Scene } from '@hoopwright/report/sheet';
import { type CouponAnswer, couponAnswer, readCouponFile, unreadAnswer } from '@hoopwright/wire/coupon';
import { hintsOf } from '@hoopwright/wire/evidence';
import { issueLine } from '@hoopwright/wire/issue';
import type { CouponView } from './couponView.ts';

export type CouponEntry = Parameters<typeof hintsOf>[0];

export function couponView(bytes: Uint8Array, entry: CouponEntry, manner: Manner): CouponView {
  const read = readCouponFile(bytes, hintsOf(entry));
  if (!read.ok) return { answer: unreadAnswer(entry.file, read.issues, read.issues.map(issueLine)) };
  const result = evaluateCoupon(read.test);
  const lineOf = (at: number): number | undefined => read.lines[at];
  const answer: CouponAnswer = couponAnswer({
    file: entry.file,
    result,
    warnings: result.findings.map((finding) => findingText(finding, lineOf, manner)),
    reasons: result.verdict.reasons.map((reason) => findingText(reason, lineOf, manner)),
    invented: read.specimen.invented === true,
    curve: true,
  });
  const scene: Scene = couponScene(
    { name: entry.file, test: read.test, result, invented: read.specimen.invented === true },
    manner,
  );
  return { answer, scene, verdict: verdictText(result.verdict, lineOf, manner) };
}
