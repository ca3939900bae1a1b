import { z } from 'zod'
import { photoAnswerSchema, photoFileSchema, readPhoto } from '../../shared/contract/photo.ts'
import {
  newProfileSchema,
  profileAnswerSchema,
  profileFileSchema,
  profileVersionSchema,
  readNewProfile,
  readProfileFile,
} from '../../shared/contract/profile.ts'
import { profileOf } from '../batch/find.ts'
import { addProfile, changePhoto, changeProfile, dropProfile, photoAddress } from '../batch/profile.ts'
import { profileList, type StoredProfile, versionList } from '../storage/read/profiles.ts'
import { checkRevision } from './revision.ts'
import { type App, answers, byId, nothing, type Routes, withRevision } from './route.ts'

/** A profile as answered: as it was entered, and what the server knows of it. */
const profileAnswer = ({ file, ...known }: StoredProfile) => ({ ...file, ...known })

const tags = ['profiles']

export const profileRoutes: Routes = (app, context) => {
  app.get(
    '/api/profiles',
    {
      schema: {
        tags,
        summary: 'Every profile of the library',
        response: answers(200, 'The profiles, the oldest first', z.array(profileAnswerSchema)),
      },
    },
    async () => (await profileList(context.db)).map(profileAnswer),
  )

  app.post(
    '/api/profiles',
    {
      schema: {
        tags,
        summary: 'Keep a profile',
        body: newProfileSchema,
        response: answers(201, 'The profile', profileAnswerSchema),
      },
    },
    async (request, reply) => {
      const profile = await addProfile(context, readNewProfile(request.body))
      return withRevision(reply, profile.revision).code(201).send(profileAnswer(profile))
    },
  )

  app.get(
    '/api/profiles/:id',
    {
      schema: {
        tags,
        summary: 'A profile',
        params: byId,
        response: answers(200, 'The profile', profileAnswerSchema),
      },
    },
    async (request, reply) => {
      const profile = await profileOf(context, request.params.id)
      return withRevision(reply, profile.revision).send(profileAnswer(profile))
    },
  )

  app.put(
    '/api/profiles/:id',
    {
      schema: {
        tags,
        summary: 'Change a profile',
        description: 'Makes a new version; every version before is kept.',
        params: byId,
        body: profileFileSchema,
        response: answers(200, 'The profile', profileAnswerSchema),
      },
    },
    async (request, reply) => {
      const { id, revision } = await profileOf(context, request.params.id)
      checkRevision(request, revision)
      const profile = await changeProfile(context, { id, revision }, readProfileFile(request.body))
      return withRevision(reply, profile.revision).send(profileAnswer(profile))
    },
  )

  app.delete(
    '/api/profiles/:id',
    { schema: { tags, summary: 'Take a profile off the list', params: byId, response: nothing } },
    async (request, reply) => {
      const { id, revision } = await profileOf(context, request.params.id)
      checkRevision(request, revision)
      await dropProfile(context, { id, revision })
      return reply.code(204).send(null)
    },
  )

  app.get(
    '/api/profiles/:id/versions',
    {
      schema: {
        tags,
        summary: 'Every version of a profile',
        params: byId,
        response: answers(200, 'The versions, the newest first', z.array(profileVersionSchema)),
      },
    },
    async (request) => {
      const { id } = await profileOf(context, request.params.id)
      return (await versionList(context.db, id)).map(({ file, ...known }) => ({ ...file, ...known }))
    },
  )

  photoRoutes(app, context)
}

/** The photograph that lies behind a profile while it is drawn. */
const photoRoutes = (app: App, context: Parameters<Routes>[1]): void => {
  app.get(
    '/api/profiles/:id/photo',
    {
      schema: {
        tags,
        summary: 'The photograph behind a profile',
        params: byId,
        response: answers(200, 'The photograph; nothing where there is none', photoAnswerSchema),
      },
    },
    async (request) => {
      const { id } = await profileOf(context, request.params.id)
      const image = await photoAddress(context, id)
      return image === undefined ? {} : { image }
    },
  )

  app.put(
    '/api/profiles/:id/photo',
    {
      schema: {
        tags,
        summary: 'Lay a photograph behind a profile, or take it away',
        params: byId,
        body: photoFileSchema,
        response: nothing,
      },
    },
    async (request, reply) => {
      await changePhoto(context, request.params.id, readPhoto(request.body))
      return reply.code(204).send(null)
    },
  )
}
