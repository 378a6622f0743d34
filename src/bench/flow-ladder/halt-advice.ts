import type { Machine } from '../../registry/generated/documents.ts';
import { shown } from '../../units/wording.ts';

/** What protective stops do to a ladder, and how to write them down; the example stops at a flow in mm3/s. */
export function haltItems({ id, sensors }: Machine, exampleFlow: number): string[] {
  return [
    detectionText(id, sensors),
    `if it stops, do not go on: write the commanded flow under events of the trial, as \`{event: halted, commandedFlow: ${shown(exampleFlow, 'volumeFlow')}, note: Clog detection}\`, or \`event: stripped\` if the drive stripped the filament. Readings at that flow and above do not count`,
    'a ladder that ends before the onset still gives a result: a lower bound',
  ];
}

function detectionText(id: string, sensors: Machine['sensors']): string {
  if (sensors === undefined)
    return `the profile of ${id} lists no sensors: look up whether it detects clogs, which may stop the ladder`;
  if (!sensors.includes('clogDetection'))
    return `${id} has no known clog detection: listen to the drive, since nothing else stops a ladder that has gone too far`;
  return `the clog detection of ${id} may take a hot end that delivers too little for a clog and stop the ladder. If the manual allows it, switch it off for this supervised run, and on again afterwards`;
}
