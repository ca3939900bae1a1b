import type { FastifySchemaCompiler } from 'fastify'
import type { z } from 'zod'
import { readInput } from '../shared/input.ts'

/**
 * Reads the parameters of an address by the route's schema. Bodies are left to the contract's own readers:
 * which schema holds for them depends on what they say, such as the units they are written in.
 */
export const checkParts: FastifySchemaCompiler<z.ZodType> =
  ({ schema, httpPart }) =>
  (data) => {
    if (httpPart === 'body') return { value: data }
    try {
      return { value: readInput(schema, data) }
    } catch (error) {
      return { error: error as Error }
    }
  }
