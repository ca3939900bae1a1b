/** The least of a job: two plain pulls of cherry, an inch thick, stored under that key. */
export const pulls = (key: string) => ({
  key,
  name: 'Pulls',
  units: 'in',
  species: 'cherry-black',
  quantity: 2,
  profile: {
    stations: [
      { at: '0', diameter: '1' },
      { at: '8', diameter: '1' },
    ],
  },
})
