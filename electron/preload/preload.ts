import { contextBridge, ipcRenderer } from 'electron'
import type { Ask, RequestName } from '../../core/contract/requests.ts'
import { fail } from '../../core/project/problem.ts'
import { stayOnOwnPages } from './stay.ts'

/** Every channel the page may use; there is no other way out of it. */
const channels = {
  hostFacts: 'coatwright:hostFacts',
  bookState: 'coatwright:bookState',
  listBackups: 'coatwright:listBackups',
  lookIntoBackup: 'coatwright:lookIntoBackup',
  bringJobBack: 'coatwright:bringJobBack',
  goBackToBackup: 'coatwright:goBackToBackup',
  leaveShutBook: 'coatwright:leaveShutBook',
  listJobs: 'coatwright:listJobs',
  openShop: 'coatwright:openShop',
  takeNumber: 'coatwright:takeNumber',
  duplicateJob: 'coatwright:duplicateJob',
  createJob: 'coatwright:createJob',
  openJob: 'coatwright:openJob',
  jobRevision: 'coatwright:jobRevision',
  workElsewhere: 'coatwright:workElsewhere',
  workOfBook: 'coatwright:workOfBook',
  openDemo: 'coatwright:openDemo',
  storeEdit: 'coatwright:storeEdit',
  deleteJob: 'coatwright:deleteJob',
  importJob: 'coatwright:importJob',
  exportJob: 'coatwright:exportJob',
  keepPicture: 'coatwright:keepPicture',
  readPicture: 'coatwright:readPicture',
  saveDocument: 'coatwright:saveDocument',
  savePdf: 'coatwright:savePdf',
  printDocument: 'coatwright:printDocument',
} as const satisfies { readonly [Name in RequestName]: `coatwright:${Name}` }

const ask: Ask = async (name, argument) => {
  if (!Object.hasOwn(channels, name)) return fail('notAllowed', 'The host knows no such request.')
  return ipcRenderer.invoke(channels[name], argument)
}

contextBridge.exposeInMainWorld('coatwright', { ask })
stayOnOwnPages()
