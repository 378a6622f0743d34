import type { Machine } from '../../registry/generated/documents.ts';
import { shown } from '../../units/wording.ts';

/** What protective stops do to a ladder, and how to write them down; the example stops at a flow in mm3/s. */
export function haltItems({ id, sensors }: Machine, exampleFlow: number): string[] {
  return [
    detectionText(id, sensors),
    `if it stops, do not go on from there: note the commanded flow and write it under events of the trial, as {event: halted, commandedFlow: ${shown(exampleFlow, 'volumeFlow')}, note: Clog detection}, or stripped where the drive ground the strand. Readings at that flow and above then do not count`,
    'a ladder that ends before the onset gives a lower bound, which is a result too',
  ];
}

function detectionText(id: string, sensors: Machine['sensors']): string {
  if (sensors === undefined)
    return `the profile of ${id} names no sensors: look up whether it detects clogs, which may stop the ladder`;
  if (!sensors.includes('clogDetection'))
    return `no clog detection is known on ${id}: listen for the drive, nothing else stops a ladder that starves`;
  return `the clog detection of ${id} takes a starving hot end for a clog and may stop the ladder. If its manual allows, switch it off for this supervised run, and on again after it`;
}
