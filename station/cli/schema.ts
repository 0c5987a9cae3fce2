/** `hoopwright schema`: the JSON Schema of the tank file. */
import { tankFileSchema } from '@hoopwright/wire/tank';
import type { Command } from 'commander';
import type { Desk } from './desk/desk.ts';

export function schemaCommand(program: Command, desk: Desk): void {
  program
    .command('schema')
    .description('print the JSON Schema of the tank file')
    .action(() => desk.out(`${JSON.stringify(tankFileSchema(), undefined, 2)}\n`));
}
