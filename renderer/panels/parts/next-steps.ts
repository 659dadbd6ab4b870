import { viewStore } from '../../state/app.ts'

/** What empty stations lead to, each with the words of its button. */
export const drawFirstRoom = {
  label: 'Draw the first room',
  onPress: () => viewStore.setState({ station: 'house' }),
}
export const walkThrough = {
  label: 'Walk through the rooms',
  onPress: () => viewStore.setState({ station: 'walk' }),
}
export const chooseFinishes = {
  label: 'Choose finishes',
  onPress: () => viewStore.setState({ station: 'finish' }),
}
export const lookAtCalendar = {
  label: 'Go to the Calendar',
  onPress: () => viewStore.setState({ station: 'calendar' }),
}
