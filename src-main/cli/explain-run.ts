import type { Io } from './io.ts'
export async function explainBuild(build: string, subject: string, json: boolean, io: Io): Promise<number> {
  void build
  void subject
  void json
  void io
  return 1
}
