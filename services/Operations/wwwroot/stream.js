// Follows the changes. A silence longer than two heartbeats counts as a lost connection.

const silenceMs = 25000;
const againMs = 3000;

/**
 * Follows from an id on. The caller hears changes, is asked to read all anew, and is told whether
 * the stream lives. A hidden page lets go of its connection and picks up when it is seen again.
 */
export function follow(lastId, { onChange, onStale, onLink }) {
  let source = null;
  let watch = 0;
  let id = lastId;

  const open = () => {
    close();
    source = new EventSource(`/v1/pipeline/events?after=${encodeURIComponent(id)}`);
    source.addEventListener('open', () => alive());
    source.addEventListener('heartbeat', () => alive());
    source.addEventListener('orders', (event) => {
      alive();
      id = event.lastEventId;
      onChange(JSON.parse(event.data));
    });
    source.addEventListener('snapshot', (event) => {
      alive();
      id = event.lastEventId;
      onStale();
    });
    source.addEventListener('error', () => {
      onLink('reconnecting');
      if (source?.readyState === EventSource.CLOSED) later(againMs);
    });
    later(silenceMs);
  };

  const later = (pause) => {
    clearTimeout(watch);
    watch = setTimeout(() => {
      onLink('reconnecting');
      open();
    }, pause);
  };

  const alive = () => {
    onLink('live');
    later(silenceMs);
  };

  const close = () => {
    clearTimeout(watch);
    source?.close();
    source = null;
  };

  document.addEventListener('visibilitychange', () => {
    if (document.hidden) {
      close();
      onLink('paused');
    } else {
      onLink('reconnecting');
      open();
    }
  });
  open();
}
