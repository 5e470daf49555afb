// Times as people at the board read them. The service's clock counts, not the browser's.

let aheadMs = 0;

/** Takes the service's clock from an answer of just now. */
export function setClock(asOf) {
  aheadMs = new Date(asOf).getTime() - Date.now();
}

export const now = () => Date.now() + aheadMs;

const clock = new Intl.DateTimeFormat('en-US', { hour: 'numeric', minute: '2-digit' });
const day = new Intl.DateTimeFormat('en-US', {
  weekday: 'short', month: 'short', day: 'numeric', timeZone: 'UTC',
});
const dayAndClock = new Intl.DateTimeFormat('en-US', {
  weekday: 'short', month: 'short', day: 'numeric', hour: 'numeric', minute: '2-digit',
});

export const clockText = (instant) => {
  const moment = new Date(instant);
  return Math.abs(now() - moment.getTime()) < 12 * 3600e3
    ? clock.format(moment) : dayAndClock.format(moment);
};

/** A calendar date as it was written, whatever the time zone. */
export const dateText = (date) => day.format(new Date(date + 'T00:00:00Z'));

export function ageText(sinceMs) {
  const seconds = Math.max(0, Math.floor((now() - sinceMs) / 1000));
  const [minutes, hours, days] = [60, 3600, 86400].map((unit) => Math.floor(seconds / unit));
  if (days > 0) return `${days} d ${hours % 24} h`;
  if (hours > 0) return `${hours} h ${minutes % 60} min`;
  if (minutes > 0) return `${minutes} min ${seconds % 60} s`;
  return `${seconds} s`;
}

/** Days from today to a calendar date, today by the wall where the board hangs. */
export function daysUntil(date) {
  const today = new Date(now());
  return Math.round((Date.parse(date + 'T00:00:00Z')
    - Date.UTC(today.getFullYear(), today.getMonth(), today.getDate())) / 86400e3);
}
