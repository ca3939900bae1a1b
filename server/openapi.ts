import swagger from '@fastify/swagger'
import { createJsonSchemaTransform } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { version } from './package-root.ts'
import type { App } from './routes/route.ts'

type Override = NonNullable<NonNullable<Parameters<typeof z.toJSONSchema>[1]>['override']>

/**
 * A list that is measured before it is read is a pipe from anything to a list; what a client has to send is
 * the list.
 */
const describeLists: Override = ({ zodSchema, jsonSchema }) => {
  const { def } = zodSchema._zod
  if (def.type !== 'pipe') return
  const { in: from, out: to } = def as z.core.$ZodPipeDef
  if (from._zod.def.type !== 'unknown' || to._zod.def.type !== 'array') return
  const list = z.toJSONSchema(to, { io: 'input', unrepresentable: 'any', override: describeLists })
  delete list.$schema
  Object.assign(jsonSchema, list)
}

/** Describes every route that is added afterwards as OpenAPI 3.1, from the schemas of the contract. */
export async function describeInterface(app: App): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Setwright',
        version,
        description:
          'Plans batches of matching turned parts. Lengths are millimetres in every answer; in any body a length is a number of mm or text in any readable form.',
      },
    },
    transform: createJsonSchemaTransform({ zodToJsonConfig: { override: describeLists } }),
  })
}
