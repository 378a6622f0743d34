/** Runs a script of the site by its path from the root, where the pages with scripts are; a page opened as a file can load nothing else. */
export function loadScript(path: string): Promise<void> {
  return new Promise((resolve) => {
    const script = document.createElement('script');
    script.src = path.split('/').map(encodeURIComponent).join('/');
    for (const end of ['load', 'error']) script.addEventListener(end, () => resolve());
    document.head.append(script);
  });
}

/** Loads what stands behind a name once, whoever asks for it. */
export function loadingOnce<Value>(load: (name: string) => Promise<Value>): (name: string) => Promise<Value> {
  const known = new Map<string, Promise<Value>>();
  return (name) => {
    const loaded = known.get(name) ?? load(name);
    known.set(name, loaded);
    return loaded;
  };
}
