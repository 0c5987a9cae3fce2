/** Version of this program, as plans and records name it. The same as in package.json (a test holds them together). */
export const PROGRAM = '0.1.0';
