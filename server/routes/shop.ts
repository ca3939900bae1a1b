import { z } from 'zod'
import { shopAnswerSchema, shopFileSchema, speciesSchema } from '../../shared/contract/shop.ts'
import { saveSettings, shopRevision } from '../batch/shop.ts'
import { shopOf } from '../context.ts'
import { checkRevision } from './revision.ts'
import { answers, type Routes, withRevision } from './route.ts'

export const shopRoutes: Routes = (app, context) => {
  const tags = ['shop']

  app.get(
    '/api/shop',
    {
      schema: {
        tags,
        summary: 'The shop’s settings',
        response: answers(200, 'The settings, defaults filled in', shopAnswerSchema),
      },
    },
    async (_request, reply) => withRevision(reply, await shopRevision(context)).send(await shopOf(context)),
  )

  app.put(
    '/api/shop',
    {
      schema: {
        tags,
        summary: 'Change the shop’s settings',
        body: shopFileSchema,
        response: answers(200, 'The settings, defaults filled in', shopAnswerSchema),
      },
    },
    async (request, reply) => {
      if (request.headers['if-match'] !== undefined) checkRevision(request, await shopRevision(context))
      const shop = await saveSettings(context, request.body)
      return withRevision(reply, await shopRevision(context)).send(shop)
    },
  )

  app.get(
    '/api/species',
    {
      schema: {
        tags,
        summary: 'The woods',
        response: answers(200, 'The handbook’s woods and the shop’s own', z.array(speciesSchema)),
      },
    },
    async () => {
      const { species } = await shopOf(context)
      const own = new Set(species.map(({ key }) => key))
      return [...context.woods.filter(({ key }) => !own.has(key)), ...species]
    },
  )
}
