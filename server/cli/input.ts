import { open } from 'node:fs/promises'
import { resolve } from 'node:path'
import { Problem } from '../../shared/problem.ts'
import { INPUT_BYTES_MAX, readJsonBytes } from '../json.ts'

const reasons: Record<string, string> = {
  ENOENT: 'there is no such file',
  EISDIR: 'is a folder; a file is needed',
  EACCES: 'may not be read by you',
  EPERM: 'may not be read by you',
  ENOTDIR: 'there is no such file',
}

const refusal = (code: 'bad-input' | 'too-large', name: string, message: string): Problem =>
  new Problem(code, `${name}: ${message}`, [{ path: name, message }])

const tooLarge = (name: string, size: number, most: number): Problem =>
  refusal('too-large', name, `is larger than ${most / 1e6} MB; read ${(size / 1e6).toFixed(1)} MB`)

/** The bytes of a stream up to the largest input; what comes beyond is read and dropped, and told as too much. */
async function bytesOf(stream: AsyncIterable<Buffer>, name: string, most: number): Promise<Buffer> {
  const chunks: Buffer[] = []
  let size = 0
  for await (const chunk of stream) {
    size += chunk.length
    if (size <= most) chunks.push(chunk)
  }
  if (size > most) throw tooLarge(name, size, most)
  return Buffer.concat(chunks)
}

async function fileBytes(path: string, name: string, most: number): Promise<Buffer> {
  try {
    const file = await open(path, 'r')
    try {
      const { size } = await file.stat()
      if (size > most) throw tooLarge(name, size, most)
      return await bytesOf(file.createReadStream({ autoClose: false }), name, most)
    } finally {
      await file.close()
    }
  } catch (error) {
    const reason = reasons[(error as NodeJS.ErrnoException).code ?? '']
    throw reason ? refusal('bad-input', name, reason) : error
  }
}

/**
 * The value of a JSON file, or of standard input for `-`. What is wrong with the file as a whole is told under its
 * name, what is wrong with a field under the field's path.
 * @throws Problem when it is missing, a folder, empty, larger than `most` bytes, not UTF-8, or not JSON
 */
export async function readFile(name: string, here: string, most = INPUT_BYTES_MAX): Promise<unknown> {
  const told = name === '-' ? 'standard input' : name
  const bytes =
    name === '-' ? await bytesOf(process.stdin, told, most) : await fileBytes(resolve(here, name), name, most)
  try {
    return readJsonBytes(bytes)
  } catch (error) {
    if (!(error instanceof Problem)) throw error
    const breaches = error.errors.map(({ path, message }) => ({ path: path || told, message }))
    throw new Problem(error.code, error.message, breaches)
  }
}
