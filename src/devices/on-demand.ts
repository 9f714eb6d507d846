/** Devices that the first screen does without, fetched together when one of them is first asked for. */
export { webAlarm } from './alarm/web-alarm'
export { webAwake } from './awake/web-awake'
export { hearJumps } from './clock/hear-jumps'
export { webDeviceKeys } from './device-keys/web-device-keys'
export { webPictures } from './pictures/web-pictures'
export { webShare } from './share/web-share'
export { webSlowHash } from './slow-hash/web-slow-hash'
